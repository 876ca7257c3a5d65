import { describe, expect, test } from 'vitest';
import { effortWithin } from '../../../src/engine/arranging/effort';
import { mark, noMarks, type Marks } from '../../../src/engine/arranging/sets';
import { random } from '../../../src/engine/algebra/random';
import { searchRoom, type Placing, type RoomTask } from '../../../src/engine/arranging/searchRoom';

type Together = (p: number, i: number, q: number, j: number) => boolean;

function taskOf(costs: readonly (readonly number[])[], together: Together): RoomTask {
  const marks = (count: number, wanted: (i: number) => boolean): Marks => {
    const set = noMarks(count);
    for (let i = 0; i < count; i++) if (wanted(i)) mark(set, i);
    return set;
  };
  return {
    costs,
    open: costs.map(({ length }) => marks(length, () => true)),
    compatible: (p, i, q) => marks(costs[q].length, (j) => together(p, i, q, j)),
  };
}

function drawn(seed: number) {
  const draw = random(seed);
  const costs = Array.from({ length: 2 + draw.below(3) }, () =>
    Array.from({ length: 1 + draw.below(45) }, () => draw.below(40) / 10).sort((a, b) => a - b),
  );
  const apart = new Set<string>();
  const share = draw.between(0.2, 0.95);
  costs.forEach((own, p) =>
    costs.forEach((others, q) => {
      if (q <= p) return;
      own.forEach((_, i) =>
        others.forEach((__, j) => draw.next() < share && apart.add(`${p} ${i} ${q} ${j}`)),
      );
    }),
  );
  const together: Together = (p, i, q, j) =>
    !apart.has(p < q ? `${p} ${i} ${q} ${j}` : `${q} ${j} ${p} ${i}`);
  /** Sets that are bad as a whole, as furniture that shuts a door together: bad with more of it too. */
  const cuts = Array.from({ length: 12 }, () =>
    costs.map(({ length }) => (draw.next() < 0.7 ? draw.below(length) : -1)),
  );
  const isCut = (placed: readonly Placing[]) =>
    cuts.some((cut) =>
      cut.every(
        (candidate, piece) =>
          candidate < 0 || placed.some((one) => one.piece === piece && one.candidate === candidate),
      ),
    );
  return { costs, together, isCut };
}

function everyChoice({ costs, together, isCut }: ReturnType<typeof drawn>): number {
  let least = Infinity;
  const go = (chosen: number[], cost: number) => {
    const p = chosen.length;
    if (p === costs.length) {
      if (!isCut(chosen.map((candidate, piece) => ({ piece, candidate })))) least = Math.min(least, cost);
      return;
    }
    costs[p].forEach((own, i) => {
      if (cost + own < least && chosen.every((j, q) => together(q, j, p, i))) go([...chosen, i], cost + own);
    });
  };
  go([], 0);
  return least;
}

describe('two to four pieces of up to 45 places, some of which cut others off', () => {
  test.each(Array.from({ length: 60 }, (_, i) => i))('seed %i: as trying every choice', (seed) => {
    const home = drawn(seed);
    const task = {
      ...taskOf(home.costs, home.together),
      cutOff(placed: readonly Placing[]) {
        if (!home.isCut(placed)) return null;
        return placed.findIndex((_, last) => home.isCut(placed.slice(0, last + 1)));
      },
    };
    const found = searchRoom(task, effortWithin({ budget: 1e7 }));
    expect(found.bound).toBe(found.cost);
    expect(found.cost).toBeCloseTo(everyChoice(home), 12);
    found.chosen?.forEach((i, p) =>
      found.chosen!.forEach((j, q) => expect(p === q || home.together(p, i, q, j)).toBe(true)),
    );
  });
});

// Everything clashes but the dearest pair, so that a search must look at every place of the first piece.
const costs = [0, 1].map(() => Array.from({ length: 3000 }, (_, i) => i));
const hard = taskOf(costs, (_p, i, _q, j) => i + j >= 5998);

test('with its budget spent it says how low another choice might be', () => {
  const effort = effortWithin({ budget: 100 });
  const found = searchRoom(hard, effort);
  expect(found.chosen).toBeNull();
  expect(found.bound).toBe(100);
  expect(effort.nodes).toBe(101);
});

test('it asks now and then whether it is still wanted', () => {
  let asked = 0;
  const found = searchRoom(hard, effortWithin({ budget: 1e6, cancelled: () => ++asked > 1 }));
  expect(asked).toBe(2);
  expect(found.bound).toBeLessThan(5998);
  expect(searchRoom(hard, effortWithin({ budget: 1e6 }))).toMatchObject({ cost: 5998, bound: 5998 });
});

test('no place for one piece is no answer, and that is proven', () => {
  const task = taskOf([[1, 2], []], () => true);
  const found = searchRoom(task, effortWithin({ budget: 10 }));
  expect(found).toEqual({ chosen: null, cost: Infinity, bound: Infinity });
});

test('what is not under the cutoff is not looked for', () => {
  const task = taskOf([[3, 4], [5]], () => true);
  const effort = effortWithin({ budget: 10 });
  expect(searchRoom(task, effort, 8)).toEqual({ chosen: null, cost: Infinity, bound: 8 });
  expect(searchRoom(task, effort, 8.1)).toMatchObject({ chosen: [0, 0], cost: 8 });
});

test('of equal totals the first stays', () => {
  const task = taskOf(
    [
      [1, 1, 1],
      [2, 2, 2],
    ],
    () => true,
  );
  expect(searchRoom(task, effortWithin({ budget: 100 })).chosen).toEqual([0, 0]);
});
