import { describe, expect, it } from 'vitest';
import { nonNegative } from '../../../src/engine/algebra/nonNegative';
import { random } from '../../../src/engine/algebra/random';

/** Normal equations of a tall matrix given by columns. */
function normal(columns: readonly number[][], b: readonly number[]) {
  const dot = (p: readonly number[], q: readonly number[]) => p.reduce((sum, v, i) => sum + v * q[i], 0);
  const n = columns.length;
  return {
    n,
    G: Float64Array.from(columns.flatMap((p) => columns.map((q) => dot(p, q)))),
    g: columns.map((p) => dot(p, b)),
  };
}

describe('nonNegative', () => {
  it('is ordinary least squares where that has no negative part', () => {
    const { G, g, n } = normal(
      [
        [1, 1, 1, 1],
        [0, 1, 2, 3],
      ],
      [1, 3, 5, 7],
    );
    const x = nonNegative(G, g, n);
    expect(x[0]).toBeCloseTo(1, 10);
    expect(x[1]).toBeCloseTo(2, 10);
  });

  it('holds at 0 what would be negative, and solves the rest again', () => {
    // Falling data on a constant and a slope: the constant alone, their mean.
    const { G, g, n } = normal(
      [
        [1, 1, 1],
        [0, 1, 2],
      ],
      [5, 4, 3],
    );
    expect([...nonNegative(G, g, n)]).toEqual([expect.closeTo(4, 12), 0]);
  });

  it('meets the conditions of Karush, Kuhn and Tucker on seeded problems of many shapes', () => {
    for (let seed = 1; seed <= 300; seed++) {
      const chance = random(seed);
      const n = 1 + chance.below(9);
      const rows = n + chance.below(30);
      // Columns of very different size, and now and then two that are nearly one.
      const columns = Array.from({ length: n }, () => {
        const size = Math.exp(4 * chance.normal());
        return Array.from({ length: rows }, () => size * (chance.normal() + 0.5));
      });
      if (n > 2 && seed % 3 === 0) columns[1] = columns[0].map((v) => v * (2 + 1e-5 * chance.normal()));
      const b = Array.from({ length: rows }, () => chance.normal());
      const { G, g } = normal(columns, b);
      const x = nonNegative(G, g, n);
      x.forEach((value, k) => {
        const slope = g[k] - x.reduce((sum, other, l) => sum + G[k * n + l] * other, 0);
        const level = 1e-6 * Math.sqrt(G[k * n + k]) * Math.hypot(...b);
        expect(value, `seed ${seed}`).toBeGreaterThanOrEqual(0);
        expect(slope, `seed ${seed}`).toBeLessThan(level);
        if (value > 0) expect(Math.abs(slope), `seed ${seed}`).toBeLessThan(level);
      });
    }
  });

  it('gives nothing to a column of nothing, and of two equal columns makes one sum', () => {
    expect([...nonNegative(Float64Array.of(0, 0, 0, 4), [0, 8], 2)]).toEqual([0, 2]);
    const x = nonNegative(Float64Array.of(1, 1, 1, 1), [3, 3], 2);
    expect(x[0] + x[1]).toBeCloseTo(3, 5);
  });

  it('ends where no column helps', () => {
    expect([...nonNegative(Float64Array.of(1, 0, 0, 1), [-1, -2], 2)]).toEqual([0, 0]);
  });
});
