import { describe, expect, it } from 'vitest';
import { choleskyWithJitter, invert, solve, solveLower } from '../../../src/engine/algebra/cholesky';
import { random } from '../../../src/engine/algebra/random';

/** G·Gᵀ + ridge for a random G: symmetric positive definite. */
function definite(n: number, seed: number, ridge: number): Float64Array {
  const { normal } = random(seed);
  const G = Float64Array.from({ length: n * n }, normal);
  const A = new Float64Array(n * n);
  for (let i = 0; i < n; i++)
    for (let j = 0; j < n; j++) for (let k = 0; k < n; k++) A[i * n + j] += G[i * n + k] * G[j * n + k];
  for (let i = 0; i < n; i++) A[i * n + i] += ridge;
  return A;
}

const times = (A: Float64Array, n: number, x: ArrayLike<number>) =>
  Array.from({ length: n }, (_, i) =>
    Array.from({ length: n }, (_, j) => A[i * n + j] * x[j]).reduce((s, v) => s + v, 0),
  );

describe('Cholesky', () => {
  it('factors the textbook matrix', () => {
    const A = Float64Array.of(4, 12, -16, 12, 37, -43, -16, -43, 98);
    expect([...choleskyWithJitter(A, 3, 1)!.lower]).toEqual([2, 0, 0, 6, 1, 0, -8, 5, 3]);
  });

  it.each([1, 2, 9, 40, 97])('solves and inverts, n = %i', (n) => {
    const A = definite(n, n, 0.5);
    const b = Array.from({ length: n }, (_, i) => Math.sin(i + 1));
    const factored = choleskyWithJitter(A, n, 1)!;
    expect(factored.jitter).toBe(0);
    const x = solve(factored, b);
    times(A, n, x).forEach((value, i) => expect(value).toBeCloseTo(b[i], 8));
    const y = solveLower(factored, b);
    times(factored.lower, n, y).forEach((value, i) => expect(value).toBeCloseTo(b[i], 10));
    const inverse = invert(factored);
    times(inverse, n, b).forEach((value, i) => expect(value).toBeCloseTo(x[i], 8));
    for (let i = 0; i < n; i++)
      for (let j = 0; j < i; j++) expect(inverse[i * n + j]).toBe(inverse[j * n + i]);
  });

  it('adds the least jitter that helps a singular matrix, and says how much', () => {
    const A = Float64Array.of(2, 2, 2, 2);
    const factored = choleskyWithJitter(A, 2, 2)!;
    expect(factored.jitter).toBeGreaterThan(0);
    expect(factored.jitter).toBeLessThanOrEqual(2e-11);
  });

  it('gives up on what no jitter makes definite', () => {
    expect(choleskyWithJitter(Float64Array.of(1, 2, 2, 1), 2, 1)).toBeNull();
    expect(choleskyWithJitter(Float64Array.of(1, NaN, NaN, 1), 2, 1)).toBeNull();
  });
});
