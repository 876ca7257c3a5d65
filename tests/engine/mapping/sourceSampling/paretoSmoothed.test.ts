import { describe, expect, it } from 'vitest';
import { paretoSmoothed } from '../../../../src/engine/mapping/sourceSampling/paretoSmoothed';
import { random } from '../../../../src/engine/algebra/random';

/** ln of ratios whose law is Pareto's with tail shape k: e^(k·exponential). */
const paretoRatios = (k: number, count: number, seed: number): number[] => {
  const chance = random(seed);
  return Array.from({ length: count }, () => -k * Math.log(1 - chance.next()));
};

describe('paretoSmoothed', () => {
  it('tells the shape of a tail that is known', () => {
    for (const k of [0.3, 0.5, 0.7, 1]) {
      const found = Array.from(
        { length: 40 },
        (_, seed) => paretoSmoothed(paretoRatios(k, 4000, seed + 1)).k,
      );
      const mean = found.reduce((sum, one) => sum + one, 0) / found.length;
      // 190 in the tail: a standard error of 0.01 over 40 draws, and the pull of the prior towards 0.5.
      expect(Math.abs(mean - k)).toBeLessThan(0.05);
    }
  });

  it('gives weights that add to one, in the order of the ratios, whatever their scale', () => {
    const ratios = paretoRatios(0.6, 120, 5);
    const { weights, k } = paretoSmoothed(ratios);
    expect(weights.reduce((sum, weight) => sum + weight, 0)).toBeCloseTo(1, 12);
    const order = ratios.map((_, i) => i).sort((a, b) => ratios[a] - ratios[b]);
    order.slice(1).forEach((i, at) => expect(weights[i]).toBeGreaterThanOrEqual(weights[order[at]]));
    const moved = paretoSmoothed(ratios.map((ratio) => ratio - 1000));
    expect(moved.k).toBeCloseTo(k, 9);
    moved.weights.forEach((weight, i) => expect(weight).toBeCloseTo(weights[i], 12));
  });

  it('leaves no single ratio to decide, and says that it would have', () => {
    const ratios = [...paretoRatios(0.3, 119, 7), 12];
    const { weights, k } = paretoSmoothed(ratios);
    const plain = ratios.map(Math.exp);
    expect(Math.max(...weights)).toBeLessThan(plain[119] / plain.reduce((sum, one) => sum + one, 0));
    expect(k).toBeGreaterThan(0.7);
  });

  it('weighs equal ratios equally', () => {
    const { weights, k } = paretoSmoothed(new Array(50).fill(-3));
    weights.forEach((weight) => expect(weight).toBeCloseTo(1 / 50, 12));
    expect(k).toBeLessThan(0.7);
  });
});
