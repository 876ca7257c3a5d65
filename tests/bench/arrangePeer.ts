import { random } from '../../src/engine/algebra/random';
import { arrange } from '../../src/engine/arranging/arrange';
import type { ArrangeRequest } from '../../src/engine/arranging/request';
import { groundsOf, planOf, type Plan } from '../../src/engine/arranging/plan';
import { together } from '../../src/engine/arranging/rules';
import { assignRooms } from '../../src/engine/arranging/assignRooms';
import { effortWithin } from '../../src/engine/arranging/effort';
import { fieldsOf } from '../../src/engine/dose/fieldAt';
import { roomValues } from '../../src/engine/arranging/roomValues';
import { smallHome } from '../support/planner/smallHome';

/** Bed and desk over seeded homes, against trying every pair of the same places; milliseconds of CPU. */
export interface ArrangeTiming {
  homes: number;
  /** Places tried, bed × desk, at the median. */
  pairs: number;
  searchMs: number;
  enumerationMs: number;
  ratio: number;
  /** The whole plan: places, doses, search, odds, rooms and alternatives. */
  wholeMedianMs: number;
  wholeP95Ms: number;
  /** Homes where search and enumeration gave the same least dose. */
  equal: number;
}

export function arrangePeer(homes = 60): ArrangeTiming {
  const each = Array.from({ length: homes }, (_, i) => {
    const request = smallHome(random(5000 + i));
    arrange(request);
    const plan = planOf(request, groundsOf(request, fieldsOf(request.fitted)));
    const [least, searchMs] = timed(() => leastBySearch(request, plan));
    const [plain, enumerationMs] = timed(() => leastByPairs(request, plan));
    const [, wholeMs] = timed(() => arrange(request));
    const pairs = plan.hands.reduce((product, { rooms }) => product * rooms.flat().length, 1);
    return { pairs, searchMs, enumerationMs, wholeMs, equal: least === plain };
  });
  const sorted = (pick: (one: (typeof each)[number]) => number) => each.map(pick).sort((a, b) => a - b);
  const at = (values: number[], share: number) =>
    values[Math.min(values.length - 1, Math.floor(share * values.length))];
  const whole = sorted(({ wholeMs }) => wholeMs);
  const searchMs = at(
    sorted((one) => one.searchMs),
    0.5,
  );
  const enumerationMs = at(
    sorted((one) => one.enumerationMs),
    0.5,
  );
  return {
    homes,
    pairs: at(
      sorted(({ pairs }) => pairs),
      0.5,
    ),
    searchMs,
    enumerationMs,
    ratio: enumerationMs / searchMs,
    wholeMedianMs: at(whole, 0.5),
    wholeP95Ms: at(whole, 0.95),
    equal: each.filter(({ equal }) => equal).length,
  };
}

/** Fresh values of rooms, so that nothing of an earlier search is used again; ways are left out on both sides. */
function leastBySearch({ rooms, rules }: ArrangeRequest, { hands }: Plan): number {
  const values = roomValues(
    hands.map((hand) => hand.rooms),
    rules,
    () => null,
  );
  const domains = hands.map((_, piece) => values.domain(piece, 'anywhere', () => true));
  return assignRooms(rooms.length, domains, values, effortWithin({ budget: 1e7 })).cost;
}

function leastByPairs({ rules }: ArrangeRequest, { hands }: Plan): number {
  const [first, second] = hands.map(({ rooms }) => rooms.flat());
  if (!first || !second) return first ? (first[0]?.cost ?? Infinity) : 0;
  let least = Infinity;
  for (const a of first) {
    for (const b of second) {
      if (together(a.stand, b.stand, rules)) least = Math.min(least, a.cost + b.cost);
    }
  }
  return least;
}

function timed<T>(work: () => T): [T, number] {
  const start = process.cpuUsage();
  const result = work();
  const { user, system } = process.cpuUsage(start);
  return [result, (user + system) / 1000];
}
