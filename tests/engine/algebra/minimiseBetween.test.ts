import { describe, expect, it } from 'vitest';
import { minimiseBetween } from '../../../src/engine/algebra/minimiseBetween';

describe('minimiseBetween', () => {
  it('finds the floor of a curve between two bounds', () => {
    const { at, value } = minimiseBetween((x) => (x - 1.3) ** 2 + 4, 0, 5, 1e-9);
    expect(at).toBeCloseTo(1.3, 6);
    expect(value).toBeCloseTo(4, 12);
  });

  it('ends at a bound where the curve falls towards it', () => {
    expect(minimiseBetween((x) => x, 2, 5, 1e-9).at).toBeCloseTo(2, 8);
    expect(minimiseBetween((x) => -x, 2, 5, 1e-9).at).toBeCloseTo(5, 8);
  });
});
