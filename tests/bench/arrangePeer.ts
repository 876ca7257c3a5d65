import { readFileSync } from 'node:fs';
import { arrange } from '../../src/engine/arranging/arrange';
import { assignRooms } from '../../src/engine/arranging/assignRooms';
import { effortWithin } from '../../src/engine/arranging/effort';
import { fieldsOf } from '../../src/engine/dose/fieldAt';
import { furnishedHome, studio } from '../support/generators/furnishedHome';
import { goodArea } from '../../src/engine/arranging/goodArea';
import { groundsOf, planOf, type Plan } from '../../src/engine/arranging/plan';
import { random } from '../../src/engine/algebra/random';
import { roomValues } from '../../src/engine/arranging/roomValues';
import { smallHome } from '../support/planner/smallHome';
import { solve } from '../../src/engine/arranging/solve';
import { together } from '../../src/engine/arranging/rules';
import type { ArrangeRequest } from '../../src/engine/arranging/request';

/** How long one kind of home takes to arrange, milliseconds of its thread. */
export interface ArrangeTiming {
  what: string;
  homes: number;
  /** Once a map: its ground in the rooms and at the heights that are asked about. */
  ground: Spread;
  /** The best arrangement over a map that was asked about before: places, doses, search, refinement. */
  best: Spread;
  /** What the odds, the table of rooms, the other answers and the second look take more, over such a map. */
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

/** Runs of one question, of which the quickest counts: the rest is what else the machine does. */
const RUNS = 3;

export function arrangeTimings(homes: number): ArrangeTiming[] {
  return KINDS.map(([what, make]) => {
    const each = Array.from({ length: homes }, (_, i) => {
      const request = make(5000 + i);
      const fieldAt = fieldsOf(request.fitted);
      const [ground, groundMs] = timed(() => {
        const found = groundsOf(request, fieldAt);
        for (const { height } of request.pieces) for (const { id } of request.rooms) found(id, height);
        return found;
      });
      const [found, best] = quickest(() =>
        solve(planOf(request, ground), request.step, { budget: request.budget }),
      );
      const [, whole] = quickest(() => arrange(request));
      const more = Math.max(0, whole - best);
      return { ground: groundMs, best, more, proven: found.proven, fits: found.chosen !== null };
    });
    const fitting = each.filter(({ fits }) => fits);
    return {
      what,
      homes,
      ground: spread(each.map(({ ground }) => ground)),
      best: spread(fitting.map(({ best }) => best)),
      more: spread(fitting.map(({ more }) => more)),
      proven: each.filter(({ proven }) => proven).length,
      infeasible: homes - fitting.length,
    };
  });
}

function quickest<T>(work: () => T): [T, number] {
  const runs = Array.from({ length: RUNS }, () => timed(work));
  return [runs[0][0], Math.min(...runs.map(([, ms]) => ms))];
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

export function pairTiming(homes: number): PairTiming {
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

function timed<T>(work: () => T): [T, number] {
  const start = threadMs();
  const result = work();
  return [result, threadMs() - start];
}

const STILL = new Int32Array(new SharedArrayBuffer(4));

/** Milliseconds this thread has run for where the system tells; else those of the whole process, compilers and all. */
function threadMs(): number {
  try {
    // Counted up when the thread pauses.
    Atomics.wait(STILL, 0, 0, 0.01);
    return Number(readFileSync('/proc/thread-self/schedstat', 'latin1').split(' ')[0]) / 1e6;
  } catch {
    const { user, system } = process.cpuUsage();
    return (user + system) / 1000;
  }
}

/** Homes too small for all their pieces: the whole of arranging, with what the least to give up takes. */
export function relaxTiming(homes: number): { homes: number; helped: number; ms: Spread } {
  const each: { ms: number; helped: boolean }[] = [];
  for (let seed = 50_000; each.length < homes; seed++) {
    const request = smallHome(random(seed), { pieces: 5, step: 0.1, sizes: [2.9, 3.7], fixtures: true });
    const [proposal, ms] = quickest(() => arrange(request));
    if (proposal.blocked.length > 0) each.push({ ms, helped: proposal.relaxed !== null });
  }
  return {
    homes,
    helped: each.filter(({ helped }) => helped).length,
    ms: spread(each.map(({ ms }) => ms)),
  };
}

/** The good area of a bed over a whole home and in a studio, made anew as for every turn of it. */
export function goodAreaTiming(homes: number): { homes: number; ms: Spread } {
  const each = Array.from({ length: homes }, (_, i) => {
    const request = i % 2 === 0 ? furnishedHome(random(6000 + i), 2) : studio(random(6000 + i));
    const ground = groundsOf(request, fieldsOf(request.fitted));
    const [bed] = request.pieces;
    const area = (angle: number) => goodArea(request, ground, { ...bed, angle });
    area(0);
    return timed(() => area(90))[1];
  });
  return { homes, ms: spread(each) };
}
