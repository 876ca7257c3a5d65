import { describe, expect, it } from 'vitest';
import { logScale } from '../../../src/views/panels/map/plotScale';

describe('a logarithmic axis', () => {
  it('spans its values with a margin and marks ones and threes', () => {
    const scale = logScale([0.04, 0.9], 0, 300);
    expect(scale.ticks).toEqual([0.1, 0.3, 1]);
    expect(scale.at(0.04)).toBeGreaterThan(0);
    expect(scale.at(0.9)).toBeLessThan(300);
    expect(scale.at(0.3) - scale.at(0.1)).toBeCloseTo(
      (300 * Math.log(3)) / Math.log(scale.high / scale.low),
      9,
    );
  });

  it('never stretches readings that hardly differ over the whole axis', () => {
    const scale = logScale([0.05, 0.051], 0, 300);
    expect(scale.high / scale.low).toBeCloseTo(3, 9);
    expect(scale.at(0.051) - scale.at(0.05)).toBeLessThan(6);
  });

  it('runs downwards for an upright axis, and stands without values', () => {
    const upright = logScale([0.1, 1], 200, 0);
    expect(upright.at(1)).toBeLessThan(upright.at(0.1));
    expect(logScale([], 0, 10).ticks.length).toBeGreaterThan(0);
  });
});
