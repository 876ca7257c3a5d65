import { describe, expect, it } from 'vitest';
import { meanOverDraws } from '../../../src/engine/dose/meanOverDraws';
import { random } from '../../../src/engine/algebra/random';

const SEED = 91;

describe('the mean field over draws', () => {
  it('of one draw without doubt is the mean of its values', () => {
    const mean = Float64Array.of(Math.log(0.1), Math.log(0.3));
    const { median, low, high } = meanOverDraws(
      [{ weight: 1, mean, covariance: new Float64Array(4) }],
      [0.5, 0.5],
    );
    for (const value of [median, low, high]) expect(value).toBeCloseTo(0.2, 6);
  });

  it('of one draw at one point is its log-normal', () => {
    const { median, low, high } = meanOverDraws(
      [{ weight: 1, mean: Float64Array.of(Math.log(0.1)), covariance: Float64Array.of(0.3 ** 2) }],
      [1],
    );
    expect(median).toBeCloseTo(0.1, 6);
    expect(high).toBeCloseTo(0.1 * Math.exp(1.6448536 * 0.3), 5);
    expect(low).toBeCloseTo(0.1 * Math.exp(-1.6448536 * 0.3), 5);
  });

  it(`of two unlike draws has the quantiles of drawing (seed ${SEED})`, () => {
    const draws = [
      { weight: 0.3, mean: Float64Array.of(-3, -2.5), covariance: Float64Array.of(0.04, 0.02, 0.02, 0.09) },
      { weight: 0.7, mean: Float64Array.of(-2, -2.2), covariance: Float64Array.of(0.01, 0, 0, 0.01) },
    ];
    const chance = random(SEED);
    const means = Array.from({ length: 100_000 }, () => {
      const { mean, covariance } = draws[chance.next() < 0.3 ? 0 : 1];
      const [u, v] = [chance.normal(), chance.normal()];
      const a = Math.sqrt(covariance[0]) * u;
      const link = covariance[1] / Math.sqrt(covariance[0]);
      const b = link * u + Math.sqrt(covariance[3] - link * link) * v;
      return (Math.exp(mean[0] + a) + Math.exp(mean[1] + b)) / 2;
    }).sort((x, y) => x - y);
    const { median, low, high } = meanOverDraws(draws, [0.5, 0.5]);
    // A share of 0.05 among 100,000 draws is known to 0.0007, which here is under 1 % of a quantile.
    expect(low / means[5_000]).toBeCloseTo(1, 2);
    expect(median / means[50_000]).toBeCloseTo(1, 2);
    expect(high / means[95_000]).toBeCloseTo(1, 2);
  });
});
