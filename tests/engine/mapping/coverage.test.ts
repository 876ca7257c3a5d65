import { describe, expect, it } from 'vitest';
import { COMMON_METER } from '../../../src/engine/survey/meter';
import { fieldOf } from '../../../src/engine/mapping/field';
import { fitSurvey } from '../../../src/engine/mapping/fitSurvey';
import { HALF_90 } from '../../../src/engine/mapping/interval';
import { gaussianField } from '../../support/gaussianField';
import { random } from '../../../src/engine/algebra/random';
import { reading, UNMARKED } from '../../support/readings';

const METER = { ...COMMON_METER, percent: 5, absolute: 0, resolution: 1e-4, range: [1e-6, 1e6] as const };
const HOMES = 60;
const ASKED = 40;

/** Share of truth inside the 90 % intervals, over homes of 10 × 8 m with known Gaussian fields, everything fitted. */
function coverage(readings: number, range: number, method: 'auto' | 'kriging' | 'inverse-distance'): number {
  const chance = random(20_260_000 + readings);
  let inside = 0;
  for (let home = 0; home < HOMES; home++) {
    const all = Array.from({ length: readings + ASKED });
    const xs = all.map(() => chance.between(0, 10));
    const ys = all.map(() => chance.between(0, 8));
    const truth = gaussianField(xs, ys, { model: 'exponential', nugget: 0.02, sill: 0.5, range }, chance);
    const shown = truth.map((ln) => Math.exp(ln - 2) * (1 + chance.between(-0.05, 0.05)));
    const result = fitSurvey({
      ...UNMARKED,
      readings: shown
        .slice(0, readings)
        .map((value, i) => reading(i, [xs[i], ys[i]], value, { meter: METER })),
      method,
    });
    if (!result.ok) throw new Error(result.problem.kind);
    const { mean, variance } = fieldOf(result.fitted, 'l1', 1).predict(
      xs.slice(readings),
      ys.slice(readings),
      {
        variance: true,
      },
    );
    for (let i = 0; i < ASKED; i++)
      if (Math.abs(truth[readings + i] - 2 - mean[i]) <= HALF_90 * Math.sqrt(variance![i])) inside++;
  }
  return inside / (HOMES * ASKED);
}

describe('90 % intervals', () => {
  it.each([
    [12, 3, 'auto'],
    [36, 3, 'auto'],
    [36, 1.5, 'kriging'],
    [36, 6, 'kriging'],
    [36, 3, 'inverse-distance'],
    [80, 3, 'auto'],
  ] as const)(
    'hold about nine tenths of the truth: %d readings, range %d m, %s',
    (readings, range, method) => {
      const share = coverage(readings, range, method);
      expect(share).toBeGreaterThan(0.86);
      expect(share).toBeLessThan(0.94);
    },
  );
});
