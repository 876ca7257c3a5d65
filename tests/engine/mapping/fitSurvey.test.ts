import { describe, expect, it } from 'vitest';
import { COMMON_METER } from '../../../src/engine/survey/meter';
import { DEFAULT_VARIOGRAM } from '../../../src/engine/mapping/variogram';
import { fieldOf } from '../../../src/engine/mapping/field';
import { fitSurvey } from '../../../src/engine/mapping/fitSurvey';
import { gaussianField } from '../../support/gaussianField';
import { krigedWithout } from '../../../src/engine/mapping/krigedWithout';
import { observe } from '../../../src/engine/mapping/observations';
import { random } from '../../../src/engine/algebra/random';
import { reading, UNMARKED } from '../../support/readings';
import type { MethodChoice, SurveyReading } from '../../../src/engine/mapping/survey';

/** Readings beside a line at y = −4 whose field is 0.4 µT·m / distance. */
const besideALine = (count: number): SurveyReading[] =>
  Array.from({ length: count }, (_, i) => {
    const [x, y] = [(i % 4) * 1.5, Math.floor(i / 4) * 1.5 + (i % 3) * 0.3];
    return reading(i + 1, [x, y], 0.4 / (y + 4), { meter: COMMON_METER });
  });

const fit = (readings: readonly SurveyReading[], method: MethodChoice = 'auto') => {
  const result = fitSurvey({ ...UNMARKED, readings, method });
  if (!result.ok) throw new Error(result.problem.kind);
  return result;
};

describe('fitSurvey', () => {
  it('answers with the number missing under three places', () => {
    const twice = [reading(1, [0, 0], 0.1), reading(2, [0, 0], 0.1), reading(3, [1, 0], 0.1)];
    for (const readings of [[], besideALine(2), twice])
      expect(fitSurvey({ ...UNMARKED, readings, method: 'auto' })).toEqual({
        ok: false,
        problem: { kind: 'too-few-readings', have: Math.min(2, readings.length), need: 3 },
      });
  });

  it('uses the default model under eight places, and where nothing varies, and says so', () => {
    expect(fit(besideALine(7)).fitted).toMatchObject({ defaultModel: 'few', variogram: DEFAULT_VARIOGRAM });
    expect(fit(besideALine(8)).fitted.defaultModel).toBeNull();
    const flat = besideALine(12).map((one) => ({ ...one, value: 0.05 }));
    expect(fit(flat).fitted).toMatchObject({ defaultModel: 'flat', variogram: DEFAULT_VARIOGRAM });
    const onePoint = Array.from({ length: 9 }, (_, i) => reading(i, [1, 1], 0.1 + i / 10, { height: i / 4 }));
    expect(fit(onePoint).fitted.defaultModel).toBe('flat');
  });

  it.each(['auto', 'kriging', 'inverse-distance', 'source-kriging', 'source-sampling'] as const)(
    'finds the field beside a line by %s',
    (method) => {
      const { fitted, evidence } = fit(besideALine(20), method);
      expect(fitted.notYet).toBe(method === 'source-sampling' ? method : undefined);
      const field = fieldOf(fitted, 'l1', 1);
      const { mean } = field.predict([2, 2.2], [1, 3.1], { variance: false });
      expect(Math.abs(mean[0] - Math.log(0.4 / 5))).toBeLessThan(0.1);
      expect(Math.abs(mean[1] - Math.log(0.4 / 7.1))).toBeLessThan(0.1);
      expect([...field.support([2, 30], [2, 30]).reason]).toEqual([0, 2]);
      expect(evidence.readings).toBe(20);
      expect(evidence.rows).toHaveLength(20);
      expect(evidence.looRmseLn).toBeLessThan(0.2);
    },
  );

  it('chooses by the evidence it shows', () => {
    const { fitted, evidence } = fit(besideALine(20));
    const errors = Object.fromEntries(evidence.compared.map(({ method, looRmseLn }) => [method, looRmseLn!]));
    const least = Math.min(...Object.values(errors));
    expect(errors[fitted.method]).toBeCloseTo(least, 8);
    expect(evidence.looRmseLn).toBeCloseTo(least, 8);
    expect(fit(besideALine(20), 'inverse-distance').evidence.looRmseLn).toBeCloseTo(
      errors['inverse-distance'],
      10,
    );
  });

  it('counts a place once, however often it was read', () => {
    const readings = besideALine(12);
    const again = readings.slice(0, 6).map((one, i) => ({ ...one, id: `m${100 + i}` }));
    const { evidence, fitted } = fit([...readings, ...again]);
    expect(evidence.readings).toBe(18);
    expect(evidence.rows).toHaveLength(12);
    const once = fit(readings).fitted.variogram;
    // A mean of equal logarithms rounds.
    expect(fitted.variogram.sill).toBeCloseTo(once.sill, 12);
    expect(fitted.variogram.range).toBeCloseTo(once.range, 12);
    expect(fitted.variogram.nugget).toBeCloseTo(once.nugget, 12);
  });

  it('takes what the meter adds off the variogram', () => {
    const chance = random(11);
    const spots = Array.from({ length: 80 }, () => [chance.between(0, 12), chance.between(0, 9)] as const);
    const values = gaussianField(
      spots.map(([x]) => x),
      spots.map(([, y]) => y),
      { model: 'exponential', nugget: 0, sill: 0.4, range: 3 },
      chance,
    );
    const coarse = { ...COMMON_METER, percent: 60, absolute: 0, resolution: 0, range: [0, 1e6] as const };
    const noise = 0.6 / Math.sqrt(3);
    const readings = values.map((ln, i) =>
      reading(i, spots[i], Math.exp(ln + noise * chance.normal()), { meter: coarse }),
    );
    const told = fit(readings, 'kriging').fitted.variogram;
    const believed = fit(readings.map((one) => ({ ...one, meter: { ...coarse, percent: 0 } }))).fitted
      .variogram;
    expect(told.nugget).toBeLessThan(0.06);
    expect(believed.nugget + believed.sill).toBeGreaterThan(told.nugget + told.sill + 0.05);
  });

  it('is not tested by readings past the end of a range, and uses them', () => {
    const readings = besideALine(12);
    const limited = reading(99, [3, 8], 0.01, { meter: COMMON_METER, limit: 'below' });
    const { evidence, fitted } = fit([...readings, limited], 'kriging');
    expect(evidence.rows.map(({ ids }) => ids[0])).not.toContain('m99');
    const at = (model: typeof fitted) =>
      fieldOf(model, 'l1', 1).predict([3], [8], { variance: false }).mean[0];
    expect(at(fitted)).toBeLessThan(
      at({ ...fitted, places: fitted.places.filter(({ limited }) => !limited) }),
    );
  });
});

describe('leaving out one place in closed form', () => {
  it('is what is found by leaving it out', () => {
    const chance = random(5);
    const readings = Array.from({ length: 25 }, (_, i) =>
      reading(i, [chance.between(0, 9), chance.between(0, 7)], Math.exp(chance.normal()), {
        meter: COMMON_METER,
        height: i % 3 === 0 ? 0.5 : 1,
      }),
    );
    // Three heights of one point are left out together.
    readings.push(reading(90, readings[4].at, 0.4, { meter: COMMON_METER, height: 1.5 }));
    readings.push(reading(91, readings[4].at, 0.2, { meter: COMMON_METER, height: 0.2 }));
    const places = observe(readings);
    const variogram = { model: 'exponential' as const, nugget: 0.03, sill: 0.6, range: 2.5 };
    const { fitted } = fit(readings, 'kriging');
    krigedWithout(places, variogram).forEach((prediction, i) => {
      const { x, y, level, height, variance } = places[i];
      const others = places.filter((place) => Math.hypot(place.x - x, place.y - y) > 1e-3);
      const without = fieldOf({ ...fitted, variogram, places: others }, level, height).predict([x], [y], {
        variance: true,
      });
      expect(prediction!.predicted).toBeCloseTo(without.mean[0], 9);
      expect(prediction!.variance).toBeCloseTo(without.variance![0] + variance, 9);
    });
  });

  it('has no answer for the only place of a level', () => {
    const places = observe([
      ...besideALine(4),
      reading(50, [0, 0], 1, { level: 'l2' }),
      reading(51, [0, 0], 2, { level: 'l2', height: 2 }),
    ]);
    expect(krigedWithout(places, DEFAULT_VARIOGRAM).slice(4)).toEqual([null, null]);
  });
});
