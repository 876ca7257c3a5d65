import { describe, expect, it, test } from 'vitest';
import { middleOf, oddsBetween, type SumsOfDraw } from '../../../src/engine/dose/overDraws';
import { random } from '../../../src/engine/algebra/random';

/** A sum that is log-normal in every draw: [share, ln of the median, standard deviation of ln]. */
const drawn = (parts: [number, number, number][]): SumsOfDraw[] =>
  parts.map(([weight, ln, sd]) => ({ weight, ln: [ln], covariance: [[sd * sd]] }));

describe('a sum over draws', () => {
  it('of one draw without doubt is that draw', () => {
    expect(middleOf(drawn([[1, Math.log(0.2), 0]]), 0)).toEqual({ median: 0.2, low: 0.2, high: 0.2 });
  });

  it('of one draw is its log-normal', () => {
    const { median, low, high } = middleOf(drawn([[1, Math.log(0.1), 0.3]]), 0);
    expect(median).toBeCloseTo(0.1, 12);
    expect(high).toBeCloseTo(0.1 * Math.exp(1.6448536 * 0.3), 7);
    expect(low).toBeCloseTo(0.1 * Math.exp(-1.6448536 * 0.3), 7);
  });

  it('of two draws without doubt is the one, then the other', () => {
    expect(
      middleOf(
        drawn([
          [0.3, -3, 0],
          [0.7, -2, 0],
        ]),
        0,
      ),
    ).toEqual({
      low: Math.exp(-3),
      median: expect.closeTo(Math.exp(-2), 9),
      high: expect.closeTo(Math.exp(-2), 9),
    });
  });

  const SEEDS = [91, 92, 93, 94, 95, 96];
  it.each(SEEDS)('of unlike draws has the quantiles of drawing (seed %i)', (seed) => {
    const chance = random(seed);
    const shares = Array.from({ length: 7 }, () => chance.next());
    const total = shares.reduce((sum, share) => sum + share, 0);
    const parts = shares.map((share): [number, number, number] => [
      share / total,
      chance.between(-3, -1),
      chance.next() < 0.3 ? 0.001 : chance.between(0.05, 0.5),
    ]);
    const sums = Array.from({ length: 100_000 }, () => {
      let left = chance.next();
      const [, ln, sd] = parts.find(([share]) => (left -= share) < 0) ?? parts[6];
      return Math.exp(ln + sd * chance.normal());
    });
    const said = middleOf(drawn(parts), 0);
    const below = (value: number) => sums.filter((sum) => sum < value).length / sums.length;
    // A share among 100,000 draws is known to 0.0016, one standard deviation.
    expect(Math.abs(below(said.low) - 0.05)).toBeLessThan(0.005);
    expect(Math.abs(below(said.median) - 0.5)).toBeLessThan(0.005);
    expect(Math.abs(below(said.high) - 0.95)).toBeLessThan(0.005);
  });
});

/** Two sums of standard normals' logs in every draw: shares, ln of medians, variance of each and what they share. */
const pair = (weight: number, ln: [number, number], own: number, shared: number): SumsOfDraw => ({
  weight,
  ln,
  covariance: [
    [own, shared],
    [shared, own],
  ],
});

test.each([
  [0, 0.5],
  [1.6448536, 0.95],
  [-1.959964, 0.025],
  [3, 0.9986501],
])('a gain of %f standard deviations is lower with probability %f', (z, probability) => {
  expect(oddsBetween([pair(1, [z, 0], 0.5, 0)], 0, 1)).toBeCloseTo(probability, 6);
});

test('what all of a draw err alike takes nothing from the odds of a gain in every draw', () => {
  const draws = [pair(0.5, [-3, -3.2], 0, 0), pair(0.5, [-1, -1.2], 0, 0)];
  expect(oddsBetween(draws, 0, 1)).toBe(1);
  expect(oddsBetween(draws, 1, 0)).toBe(0);
});

test('a gain in three of four draws that are sure has odds of three in four', () => {
  const draws = [pair(0.75, [-1, -2], 0, 0), pair(0.25, [-2, -1], 0, 0)];
  expect(oddsBetween(draws, 0, 1)).toBe(0.75);
});

test('what all of many draws say is sure to the last digit', () => {
  const draws = Array.from({ length: 120 }, () => pair(1 / 120, [-1, -2], 0, 0));
  expect(oddsBetween(draws, 0, 1)).toBe(1);
});
