import { arrange } from '../../src/engine/arranging/arrange';
import { assignRooms } from '../../src/engine/arranging/assignRooms';
import { effortWithin } from '../../src/engine/arranging/effort';
import { fieldsOf } from '../../src/engine/dose/fieldAt';
import { furnishedHome, studio } from '../support/generators/furnishedHome';
import { groundsOf, planOf, type Plan } from '../../src/engine/arranging/plan';
import { random } from '../../src/engine/algebra/random';
import { roomValues } from '../../src/engine/arranging/roomValues';
import { solve } from '../../src/engine/arranging/solve';
import { together } from '../../src/engine/arranging/rules';
import type { ArrangeRequest } from '../../src/engine/arranging/request';

/** How long one kind of home takes to arrange, milliseconds of CPU, warm. */
export interface ArrangeTiming {
  what: string;
  homes: number;
  /** The best arrangement: places, doses, search, refinement. */
  best: Spread;
  /** What the odds, the table of rooms, the other answers and the second look take more. */
  more: Spread;
  proven: number;
  infeasible: number;
}

export interface Spread {
  median: number;
  p95: number;
  worst: number;
}

const KINDS: [what: string, make: (seed: number) => ArrangeRequest][] = [
  ['bed + desk, 3–6 rooms', (seed) => furnishedHome(random(seed), 2)],
  ['five pieces, 3–6 rooms', (seed) => furnishedHome(random(seed), 5)],
  ['five pieces, one studio', (seed) => studio(random(seed))],
];

export function arrangeTimings(homes = 100): ArrangeTiming[] {
  return KINDS.map(([what, make]) => {
    const each = Array.from({ length: homes }, (_, i) => {
      const request = make(5000 + i);
      if (i === 0) arrange(request);
      const fieldAt = fieldsOf(request.fitted);
      const [found, best] = timed(() => {
        const plan = planOf(request, groundsOf(request, fieldAt));
        return solve(plan, request.step, { budget: request.budget });
      });
      const [, whole] = timed(() => arrange(request));
      return { best, more: Math.max(0, whole - best), proven: found.proven, fits: found.chosen !== null };
    });
    return {
      what,
      homes,
      best: spread(each.filter(({ fits }) => fits).map(({ best }) => best)),
      more: spread(each.filter(({ fits }) => fits).map(({ more }) => more)),
      proven: each.filter(({ proven }) => proven).length,
      infeasible: each.filter(({ fits }) => !fits).length,
    };
  });
}

/** The search alone against trying every pair of the same places, ways left out on both sides. */
export interface PairTiming {
  homes: number;
  /** Places tried, bed × desk, at the median. */
  pairs: number;
  searchMs: number;
  enumerationMs: number;
  ratio: number;
  /** Homes where both gave the same least dose. */
  equal: number;
}

export function pairTiming(homes = 60): PairTiming {
  const each = Array.from({ length: homes }, (_, i) => {
    const request = furnishedHome(random(5000 + i), 2);
    const plan = planOf(request, groundsOf(request, fieldsOf(request.fitted)));
    leastBySearch(request, plan);
    const [least, searchMs] = timed(() => leastBySearch(request, plan));
    const [plain, enumerationMs] = timed(() => leastByPairs(request, plan));
    const pairs = plan.hands.reduce((product, { rooms }) => product * rooms.flat().length, 1);
    return { pairs, searchMs, enumerationMs, equal: Math.abs(least / plain - 1) < 1e-12 || least === plain };
  });
  const median = (pick: (one: (typeof each)[number]) => number) => spread(each.map(pick)).median;
  const searchMs = median((one) => one.searchMs);
  const enumerationMs = median((one) => one.enumerationMs);
  return {
    homes,
    pairs: median(({ pairs }) => pairs),
    searchMs,
    enumerationMs,
    ratio: enumerationMs / searchMs,
    equal: each.filter(({ equal }) => equal).length,
  };
}

/** Fresh values of rooms, so that nothing of an earlier search is used again. */
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
  let least = Infinity;
  for (const a of first) {
    for (const b of second) {
      if (together(a.stand, b.stand, rules)) least = Math.min(least, a.cost + b.cost);
    }
  }
  return least;
}

export function spread(values: readonly number[]): Spread {
  const sorted = values.toSorted((a, b) => a - b);
  const at = (share: number) => sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? 0;
  return { median: at(0.5), p95: at(0.95), worst: sorted.at(-1) ?? 0 };
}

export function timed<T>(work: () => T): [T, number] {
  const start = process.cpuUsage();
  const result = work();
  const { user, system } = process.cpuUsage(start);
  return [result, (user + system) / 1000];
}
