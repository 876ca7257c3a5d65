import { expect, test } from 'vitest';
import { bilinearForm } from '../../../src/engine/algebra/bilinearForm';
import { random } from '../../../src/engine/algebra/random';

test.each([
  [1, 1],
  [1, 4],
  [2, 3],
  [5, 2],
  [8, 7],
  [9, 9],
])('of %i × %i numbers is the sum of all their products', (m, n) => {
  const draw = random(100 * m + n);
  const row = (count: number) => Float64Array.from({ length: count }, () => draw.between(-1, 1));
  const [p, X, q] = [row(m), row(m * n), row(n)];
  let sum = 0;
  p.forEach((a, i) => q.forEach((b, j) => (sum += a * X[i * n + j] * b)));
  expect(bilinearForm(p, X, q)).toBeCloseTo(sum, 12);
});

test('of nothing is nothing', () => {
  expect(bilinearForm(new Float64Array(0), new Float64Array(0), new Float64Array(3))).toBe(0);
});
