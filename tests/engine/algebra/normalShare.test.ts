import { expect, it } from 'vitest';
import { normalShare } from '../../../src/engine/algebra/normalShare';

// Abramowitz & Stegun 1964, table 26.1: P(x) to fifteen digits.
it.each([
  [0, 0.5],
  [0.5, 0.691462461274013],
  [1, 0.841344746068543],
  [2, 0.977249868051821],
  [3, 0.99865010196837],
])('the share of a standard normal below %f is that of the tables, to 8e-8', (z, expected) => {
  expect(Math.abs(normalShare(z) - expected)).toBeLessThan(8e-8);
  expect(normalShare(-z)).toBeCloseTo(1 - normalShare(z), 8);
});
