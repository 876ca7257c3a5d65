import { describe, expect, it } from 'vitest';
import { minimise, minimiseBetween } from '../../../src/engine/algebra/minimise';

describe('minimising', () => {
  it('finds the floor of a curve between two bounds', () => {
    const { at, value } = minimiseBetween((x) => (x - 1.3) ** 2 + 4, 0, 5, 1e-9);
    expect(at).toBeCloseTo(1.3, 6);
    expect(value).toBeCloseTo(4, 12);
  });

  it('ends at a bound where the curve falls towards it', () => {
    expect(minimiseBetween((x) => x, 2, 5, 1e-9).at).toBeCloseTo(2, 8);
    expect(minimiseBetween((x) => -x, 2, 5, 1e-9).at).toBeCloseTo(5, 8);
  });

  it('follows the curved valley of Rosenbrock (1960) from his start', () => {
    const { at } = minimise(([x, y]) => 100 * (y - x * x) ** 2 + (1 - x) ** 2, [-1.2, 1], [0.5, 0.5]);
    expect(at[0]).toBeCloseTo(1, 5);
    expect(at[1]).toBeCloseTo(1, 5);
  });

  it('stays out of where the function refuses', () => {
    const { at } = minimise(([x, y]) => (x < 0.5 ? NaN : (x - 0.6) ** 2 + (y - 2) ** 2), [3, 0], [0.5, 0.5]);
    expect(at[0]).toBeCloseTo(0.6, 4);
    expect(at[1]).toBeCloseTo(2, 4);
  });

  it('asks for no more than its limit allows', () => {
    let asked = 0;
    minimise(([x]) => (asked++, x ** 2), [40], [1], { limit: 10 });
    // Two corners to begin with, then at most two looks and one shrink a round.
    expect(asked).toBeLessThanOrEqual(2 + 10 * 3);
  });
});
