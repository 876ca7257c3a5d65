import { describe, expect, test } from 'vitest';
import { compatibility, search } from '../../../src/engine/arranging/search';
import { random } from '../../../src/engine/algebra/random';

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
  const together = (p: number, i: number, q: number, j: number) =>
    !apart.has(p < q ? `${p} ${i} ${q} ${j}` : `${q} ${j} ${p} ${i}`);
  return { costs, together };
}

function everyChoice({ costs, together }: ReturnType<typeof drawn>): number {
  let least = Infinity;
  const go = (chosen: number[], cost: number) => {
    const p = chosen.length;
    if (p === costs.length) {
      least = Math.min(least, cost);
      return;
    }
    costs[p].forEach((own, i) => {
      if (cost + own < least && chosen.every((j, q) => together(q, j, p, i))) go([...chosen, i], cost + own);
    });
  };
  go([], 0);
  return least;
}

describe('two to four pieces of up to 45 places', () => {
  test.each(Array.from({ length: 60 }, (_, i) => i))('seed %i: as trying every choice', (seed) => {
    const home = drawn(seed);
    const compatible = compatibility(
      home.costs.map(({ length }) => length),
      home.together,
    );
    const found = search(home.costs, compatible, { budget: 1e7 });
    expect(found.proven).toBe(true);
    expect(found.cost).toBeCloseTo(everyChoice(home), 12);
    found.chosen?.forEach((i, p) =>
      found.chosen!.forEach((j, q) => expect(p === q || home.together(p, i, q, j)).toBe(true)),
    );
  });
});

// Everything clashes but the dearest pair, so that a search must look at every place of the first piece.
const hard = {
  costs: [0, 1].map(() => Array.from({ length: 3000 }, (_, i) => i)),
  together: (_p: number, i: number, _q: number, j: number) => i + j >= 5998,
};

test('with its budget spent it says that nothing is proven', () => {
  const compatible = compatibility([3000, 3000], hard.together);
  const found = search(hard.costs, compatible, { budget: 100 });
  expect(found.proven).toBe(false);
  expect(found.nodes).toBe(101);
});

test('it asks now and then whether it is still wanted', () => {
  const compatible = compatibility([3000, 3000], hard.together);
  let asked = 0;
  const found = search(hard.costs, compatible, { budget: 1e6, cancelled: () => ++asked > 1 });
  expect(asked).toBe(2);
  expect(found.proven).toBe(false);
  expect(search(hard.costs, compatible, { budget: 1e6 }).cost).toBe(5998);
});

test('no place for one piece is no answer, and that is proven', () => {
  const compatible = compatibility([2, 0], () => true);
  expect(search([[1, 2], []], compatible, { budget: 10 })).toMatchObject({ chosen: null, proven: true });
});

test('of equal totals the first stays', () => {
  const compatible = compatibility([3, 3], () => true);
  const costs = [
    [1, 1, 1],
    [2, 2, 2],
  ];
  expect(search(costs, compatible, { budget: 100 }).chosen).toEqual([0, 0]);
});
