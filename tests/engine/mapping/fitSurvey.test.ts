import { describe, expect, it } from 'vitest';
import { COMMON_METER } from '../../../src/engine/survey/meter';
import { fieldOf } from '../../../src/engine/mapping/field';
import { fitSurvey } from '../../../src/engine/mapping/fitSurvey';
import type { SurveyReading } from '../../../src/engine/mapping/survey';

const reading = (id: number, x: number, y: number, value: number): SurveyReading => ({
  id: `m${id}`,
  level: 'l1',
  at: [x, y],
  height: 1,
  value,
  meter: COMMON_METER,
  limit: null,
  min: null,
  max: null,
  peak: false,
});

/** Readings beside a line at y = −4 whose field is 0.4 / distance. */
const beside = (count: number): SurveyReading[] =>
  Array.from({ length: count }, (_, i) => {
    const [x, y] = [(i % 4) * 1.5, Math.floor(i / 4) * 1.5 + (i % 3) * 0.3];
    return reading(i + 1, x, y, 0.4 / (y + 4));
  });

describe('fitSurvey', () => {
  it('answers with the number missing under three places', () => {
    expect(fitSurvey({ readings: beside(2), method: 'auto' })).toEqual({
      ok: false,
      problem: { kind: 'too-few-readings', have: 2, need: 3 },
    });
  });

  it.each(['auto', 'kriging', 'inverse-distance', 'source-kriging', 'source-sampling'] as const)(
    'maps a survey by %s',
    (method) => {
      const result = fitSurvey({ readings: beside(20), method });
      if (!result.ok) throw new Error('no fit');
      const { fitted, evidence } = result;
      expect(fitted.notYet).toBe(method.startsWith('source') ? method : undefined);
      expect(evidence.rows).toHaveLength(20);
      const field = fieldOf(fitted, 'l1', 1);
      const { mean, variance } = field.predict([2, 2.2], [1, 3.1], { variance: true });
      expect(Math.exp(mean[0])).toBeCloseTo(0.4 / 5, 1);
      expect(variance![0]).toBeGreaterThan(0);
      expect(field.support([2, 30], [2, 30]).reason).toEqual(Uint8Array.of(0, 2));
    },
  );
});
