import { describe, expect, it } from 'vitest';
import { COMMON_METER, correct, lnVariance, standardUncertainty } from '../../../src/engine/survey/meter';
import { studentQuantile } from '../../../src/engine/survey/student';

describe('meter', () => {
  it('takes limits as rectangular and adds the display step: JCGM 100 4.3.7', () => {
    const meter = { ...COMMON_METER, percent: 5, absolute: 0.002, resolution: 0.001 };
    const accuracy = (0.05 * 0.14 + 0.002) / Math.sqrt(3);
    expect(standardUncertainty(meter, 0.14)).toBeCloseTo(
      Math.hypot(accuracy, 0.001 / (2 * Math.sqrt(3))),
      12,
    );
  });

  it('halves an expanded uncertainty: JCGM 100 6.2.1', () => {
    const meter = { ...COMMON_METER, percent: 3, absolute: 0, coverage: 'k2' as const, resolution: 0 };
    expect(standardUncertainty(meter, 2)).toBeCloseTo(0.03, 12);
  });

  it('corrects by gain and offset, and carries the uncertainty through', () => {
    const meter = { ...COMMON_METER, gain: 0.8, offset: -0.01 };
    expect(correct(meter, 0.5)).toBeCloseTo(0.39, 12);
    expect(standardUncertainty(meter, 0.5)).toBeCloseTo(0.8 * standardUncertainty(COMMON_METER, 0.5), 12);
  });

  it('gives ln B the variance of the log-normal law', () => {
    expect(lnVariance(1, 0.05)).toBeCloseTo(0.0025, 5);
    expect(lnVariance(0.01, 0.02)).toBeCloseTo(Math.log(5), 12);
  });
});

// Two-sided 95 % and 99 % of Student's t as printed in JCGM 100:2008, table G.2 (from memory).
describe('Student’s t', () => {
  it.each([
    [1, 12.71, 63.66],
    [2, 4.3, 9.92],
    [5, 2.57, 4.03],
    [16, 2.12, 2.92],
    [40, 2.02, 2.7],
  ])('%d degrees of freedom', (degrees, at95, at99) => {
    expect(studentQuantile(0.975, degrees)).toBeCloseTo(at95, 2);
    expect(studentQuantile(0.995, degrees)).toBeCloseTo(at99, 2);
    expect(studentQuantile(0.025, degrees)).toBeCloseTo(-at95, 2);
  });

  it('is 0 in the middle and needs a degree of freedom', () => {
    expect(studentQuantile(0.5, 7)).toBeCloseTo(0, 9);
    expect(() => studentQuantile(0.9, 0)).toThrow();
  });
});
