import { describe, expect, it } from 'vitest';
import { BUILDS } from '../../support/generators/builds';
import { changesWithout } from '../../../src/engine/mapping/pull/changesWithout';
import { COMMON_METER } from '../../../src/engine/survey/meter';
import { fieldOf } from '../../../src/engine/mapping/field';
import { fitSurvey } from '../../../src/engine/mapping/fitSurvey';
import { krige } from '../../../src/engine/mapping/kriging';
import { krigedWeights } from '../../../src/engine/mapping/krigedWeights';
import { random } from '../../../src/engine/algebra/random';
import { reading, UNMARKED } from '../../support/readings';
import { refitSources } from '../../../src/engine/mapping/sourceKriging/fitSources';
import type { FittedSurvey } from '../../../src/engine/mapping/fitSurvey';
import type { Place } from '../../../src/engine/mapping/observations';
import type { Survey, SurveyReading } from '../../../src/engine/mapping/survey';

const SEED = 71;
const GROUND = { level: 'l1', height: 1, xs: [0.5, 2.2, 4.4, 7.9], ys: [0.7, 3.1, 1.6, 5.2] };

/** Two levels; one point of the first is read at three heights. */
function readings(): SurveyReading[] {
  const chance = random(SEED);
  const places = Array.from({ length: 24 }, (_, i) => ({
    at: [chance.between(0, 9), chance.between(0, 7)] as const,
    level: i < 16 ? 'l1' : 'l2',
    height: 1,
  }));
  const stacked = [0.5, 1, 1.5].map((height) => ({ at: [4, 2] as const, level: 'l1', height }));
  return [...places, ...stacked].map(({ at, level, height }, i) =>
    reading(i + 1, at, 0.3 / (at[1] + 2) + chance.between(0, 0.02), { level, height, meter: COMMON_METER }),
  );
}

const fit = (survey: Survey): FittedSurvey => {
  const result = fitSurvey(survey);
  if (!result.ok) throw new Error(result.problem.kind);
  return result.fitted;
};

/** The places but i and what stands at its point of the level. */
const but = (places: readonly Place[], i: number) =>
  places.filter(({ level, x, y }) => level !== places[i].level || x !== places[i].x || y !== places[i].y);

const meanOf = (fitted: FittedSurvey) =>
  fieldOf(fitted, GROUND.level, GROUND.height).predict(GROUND.xs, GROUND.ys, { variance: false }).mean;

describe('what leaving a reading out changes', () => {
  it.each(['kriging', 'inverse-distance', 'source-kriging'] as const)(
    `%s without marks: as drawing the map from the other places (seed ${SEED})`,
    (method) => {
      const fitted = fit({ ...UNMARKED, readings: readings(), method });
      const changes = changesWithout(fitted, GROUND);
      const whole = meanOf(fitted);
      expect(changes).toHaveLength(fitted.places.length);
      fitted.places.forEach((_, i) => {
        const rest = meanOf({ ...fitted, places: but(fitted.places, i) });
        rest.forEach((value, p) => expect(changes[i][p]).toBeCloseTo(value - whole[p], 9));
      });
      expect(Math.max(...changes.flatMap((change) => [...change.map(Math.abs)]))).toBeGreaterThan(0.01);
    },
  );

  it('source kriging: near drawing the map with strengths found anew from the other places', () => {
    let [off, all] = [0, 0];
    for (let seed = 0; seed < 6; seed++) {
      const home = BUILDS['along walls'](seed, 24);
      const survey: Survey = {
        ...UNMARKED,
        readings: home.readings,
        sources: home.marked,
        method: 'source-kriging',
      };
      const fitted = fit(survey);
      const { level } = fitted.places[0];
      const ground = { ...GROUND, level };
      const at = (one: FittedSurvey) =>
        fieldOf(one, level, 1).predict(GROUND.xs, GROUND.ys, { variance: false }).mean;
      const whole = at(fitted);
      changesWithout(fitted, ground).forEach((change, i) => {
        const places = but(fitted.places, i);
        const model = refitSources(fitted.sources!.model, places, survey);
        const rest = at({ ...fitted, places, sources: { ...fitted.sources!, model } });
        change.forEach((value, p) => {
          off += (value - (rest[p] - whole[p])) ** 2;
          all += (rest[p] - whole[p]) ** 2;
        });
      });
    }
    expect(all).toBeGreaterThan(0);
    expect(Math.sqrt(off / all)).toBeLessThan(0.15);
  });

  it('is nothing for a reading that says what the others say', () => {
    const own = readings();
    const fitted = fit({ ...UNMARKED, readings: own, method: 'kriging' });
    const { places } = fitted;
    const rest = fieldOf({ ...fitted, places: but(places, 3) }, 'l1', 1);
    const ln = rest.predict([places[3].x], [places[3].y], { variance: false }).mean[0];
    const agreeing = { ...fitted, places: places.map((place, i) => (i === 3 ? { ...place, ln } : place)) };
    const [, , , change] = changesWithout(agreeing, GROUND);
    change.forEach((value) => expect(Math.abs(value)).toBeLessThan(1e-9));
  });

  it('weighs readings as kriging does, to 1 in all', () => {
    const data = { xs: [0, 1, 4], ys: [0, 2, 1], values: [0.3, -0.2, 0.9], noise: [0.1, 0.02, 0.05] };
    const kriging = krige(data, { model: 'exponential', nugget: 0.05, sill: 0.6, range: 2 });
    const weights = krigedWeights(kriging, data, { xs: [2], ys: [1] });
    expect(weights.reduce((sum, w) => sum + w, 0)).toBeCloseTo(1, 12);
  });
});
