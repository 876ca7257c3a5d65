import { expect, test } from 'vitest';
import { normalQuantile } from '../../../src/engine/algebra/normalQuantile';

// Abramowitz & Stegun 1964, table 26.5.
test.each([
  [0.5, 0],
  [0.75, 0.67449],
  [0.95, 1.64485],
  [0.975, 1.95996],
  [0.999, 3.09023],
])('%f of a standard normal lie below %f', (p, z) => {
  expect(Math.abs(normalQuantile(p) - z)).toBeLessThan(4.5e-4);
  expect(Math.abs(normalQuantile(1 - p) + z)).toBeLessThan(4.5e-4);
});
