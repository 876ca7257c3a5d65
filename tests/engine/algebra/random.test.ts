import { describe, expect, it } from 'vitest';
import { random } from '../../../src/engine/algebra/random';

const draws = (n: number, draw: () => number) => Array.from({ length: n }, draw);
const mean = (values: number[]) => values.reduce((sum, x) => sum + x, 0) / values.length;

describe('random numbers', () => {
  it('are the same for the same seed and others for another', () => {
    const [a, b, c] = [random(7), random(7), random(8)];
    const first = draws(50, a.next);
    expect(draws(50, b.next)).toEqual(first);
    expect(draws(50, c.next)).not.toEqual(first);
  });

  it('are the same on every machine', () => {
    // Words worked out apart from this code, with whole numbers of any size, from the generator's definition.
    const { next } = random(1);
    expect(draws(3, next).map((x) => Math.round(x * 2 ** 32))).toEqual([1299785925, 4001059704, 2906380172]);
  });

  it('are uniform to within what 40,000 draws allow', () => {
    const { next, below } = random(2);
    const values = draws(40_000, next);
    // Standard error of the mean 1/√(12 n) = 0.0014, of the mean square 0.0015: four of them.
    expect(Math.abs(mean(values) - 1 / 2)).toBeLessThan(0.006);
    expect(Math.abs(mean(values.map((x) => x * x)) - 1 / 3)).toBeLessThan(0.006);
    expect(Math.min(...values)).toBeGreaterThanOrEqual(0);
    expect(Math.max(...values)).toBeLessThan(1);
    const counts = [0, 0, 0, 0, 0];
    for (let i = 0; i < 10_000; i++) counts[below(5)]++;
    // Chi squared with 4 degrees of freedom stays under 18.5 in 999 of 1,000 streams.
    expect(counts.reduce((sum, n) => sum + (n - 2000) ** 2 / 2000, 0)).toBeLessThan(18.5);
  });

  it('have a normal form with the moments of the normal', () => {
    const { normal } = random(3);
    const values = draws(40_000, normal);
    expect(Math.abs(mean(values))).toBeLessThan(0.02);
    expect(Math.abs(mean(values.map((x) => x ** 2)) - 1)).toBeLessThan(0.03);
    expect(Math.abs(mean(values.map((x) => x ** 4)) - 3)).toBeLessThan(0.2);
    // 4.55 % lie beyond two standard deviations.
    expect(Math.abs(mean(values.map((x) => (Math.abs(x) > 2 ? 1 : 0))) - 0.0455)).toBeLessThan(0.0042);
  });
});
