import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { fitFalloff } from '../../../src/engine/magnetics/falloff';

describe('fall-off', () => {
  // BPA data in NIEHS/DOE, Questions and Answers about EMF (1995): mG at 100, 200 and 300 feet.
  it.each([
    ['115 kV', [1.7, 0.4, 0.2], 1.963],
    ['230 kV', [7.1, 1.8, 0.8], 1.986],
    ['500 kV', [12.6, 3.2, 1.4], 1.998],
  ])('of a %s line: %j mG gives %d', (_, values, exponent) => {
    expect(fitFalloff([100, 200, 300], values)!.exponent).toBeCloseTo(exponent, 3);
  });

  it('is found exactly where there is no noise, in any unit', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.5, max: 3.5, noNaN: true }),
        fc.double({ min: 0.01, max: 20, noNaN: true }),
        (exponent, scale) => {
          const distances = [1.5, 2, 4, 7, 13];
          const fit = fitFalloff(
            distances,
            distances.map((r) => scale * r ** -exponent),
          )!;
          expect(fit.exponent).toBeCloseTo(exponent, 9);
          expect(fit.scale / scale).toBeCloseTo(1, 9);
          expect(fit.standardError).toBeLessThan(1e-7);
        },
      ),
    );
  });

  it('knows how sure it is', () => {
    // ln r = 0, 1, 2 and ln B = 0, −1, −3: slope −1.5, residuals 1/6, −1/3, 1/6 of ln, so s² = 1/6, SE² = s²/2.
    const e = Math.E;
    const fit = fitFalloff([1, e, e * e], [1, 1 / e, e ** -3])!;
    expect(fit.exponent).toBeCloseTo(1.5, 12);
    expect(fit.standardError).toBeCloseTo(Math.sqrt(1 / 12), 12);
  });

  it('needs three values, and two distances that differ', () => {
    expect(fitFalloff([], [])).toBeNull();
    expect(fitFalloff([1, 2], [0.4, 0.1])).toBeNull();
    expect(fitFalloff([3, 3, 3], [0.2, 0.3, 0.4])).toBeNull();
    expect(fitFalloff([1, 2, 2], [0.4, 0.1, 0.1])!.exponent).toBeCloseTo(2, 12);
    expect(fitFalloff([1, 2, 3], [0.4, 0.4, 0.4])!.exponent).toBe(0);
  });
});
