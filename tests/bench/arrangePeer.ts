import { random } from '../../src/engine/algebra/random';
import { arrange } from '../../src/engine/arranging/arrange';
import { planOf, type Plan } from '../../src/engine/arranging/plan';
import { together } from '../../src/engine/arranging/rules';
import { compatibility, search } from '../../src/engine/arranging/search';
import { fieldsOf } from '../../src/engine/dose/fieldAt';
import { randomHome } from '../engine/arranging/randomHome';

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
    const request = randomHome(random(5000 + i));
    arrange(request);
    const plan = planOf(request, fieldsOf(request.fitted));
    const [least, searchMs] = timed(() => leastBySearch(plan));
    const [plain, enumerationMs] = timed(() => leastByPairs(plan));
    const [, wholeMs] = timed(() => arrange(request));
    const pairs = plan.hands.reduce((product, { candidates }) => product * candidates.length, 1);
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

/** A fresh table of who may be together, so that nothing of an earlier search is used again. */
function leastBySearch({ hands }: Plan): number {
  const compatible = compatibility(
    hands.map(({ candidates }) => candidates.length),
    (p, i, q, j) => together(hands[p].candidates[i].stand, hands[q].candidates[j].stand),
  );
  return search(
    hands.map(({ candidates }) => candidates.map(({ cost }) => cost)),
    compatible,
    { budget: 1e7 },
  ).cost;
}

function leastByPairs({ hands }: Plan): number {
  const [first, second] = hands;
  if (!first || !second) return first ? (first.candidates[0]?.cost ?? Infinity) : 0;
  let least = Infinity;
  for (const a of first.candidates) {
    for (const b of second.candidates) {
      if (together(a.stand, b.stand)) least = Math.min(least, a.cost + b.cost);
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
