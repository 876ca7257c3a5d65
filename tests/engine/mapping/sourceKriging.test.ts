import { describe, expect, it } from 'vitest';
import { BUILDS } from '../../support/generators/builds';
import { COMMON_METER } from '../../../src/engine/survey/meter';
import { fieldOf } from '../../../src/engine/mapping/field';
import { fitRemainder } from '../../../src/engine/mapping/sourceKriging/fitRemainder';
import { fitSources } from '../../../src/engine/mapping/sourceKriging/fitSources';
import { fitSurvey, withSurvey } from '../../../src/engine/mapping/fitSurvey';
import { observe } from '../../../src/engine/mapping/observations';
import { random } from '../../../src/engine/algebra/random';
import { reading, UNMARKED } from '../../support/readings';
import { sourceField } from '../../../src/engine/mapping/sourceKriging/sourceField';
import { sourceWithout } from '../../../src/engine/mapping/sourceKriging/sourceWithout';
import type { MarkedSource, MethodChoice, Survey, SurveyReading } from '../../../src/engine/mapping/survey';

const LINE: MarkedSource = {
  id: 's1',
  kind: 'line',
  level: 'l1',
  path: [
    [-30, -6],
    [40, -6],
  ],
  height: 7,
  falloff: 'fit',
  origin: 'outside',
};
const KETTLE: MarkedSource = {
  id: 's2',
  kind: 'point',
  level: 'l1',
  path: [[3, 2]],
  height: 0.9,
  falloff: 'fit',
  origin: 'house',
};
const ELEVATIONS = { l1: 0, l2: 2.8 };

/** B of a background of 0.02 µT, a line of `a` µT at 1 m that falls as 1/rⁿ, and an appliance of `c` µT at 1 m, as 1/r³. */
const field =
  ({ a = 2, n = 2, c = 0.03 } = {}) =>
  (x: number, y: number, z: number): number => {
    const line = Math.hypot(y + 6, z - 7);
    const kettle = Math.max(0.3, Math.hypot(x - 3, y - 2, z - 0.9));
    return Math.hypot(0.02, a * line ** -n, c * kettle ** -3);
  };

const SPOTS = [
  [0.5, 0.4],
  [2.4, 0.7],
  [5.2, 0.5],
  [7.5, 1.1],
  [0.8, 2.6],
  [2.5, 2.2],
  [3.4, 2.5],
  [6.1, 3.0],
  [1.2, 5.1],
  [3.7, 4.6],
  [5.9, 5.4],
  [7.4, 4.2],
] as const;

const read = (
  truth: (x: number, y: number, z: number) => number,
  spots: readonly (readonly [number, number])[] = SPOTS,
): SurveyReading[] =>
  spots.map((at, i) =>
    reading(i + 1, at, truth(at[0], at[1], 1), { meter: { ...COMMON_METER, resolution: 0 } }),
  );

const survey = (
  readings: readonly SurveyReading[],
  sources: readonly MarkedSource[] = [LINE, KETTLE],
  method: MethodChoice = 'source-kriging',
): Survey => ({ readings, sources, elevations: ELEVATIONS, walls: [], method });

const fit = (asked: Survey) => {
  const result = fitSurvey(asked);
  if (!result.ok) throw new Error(result.problem.kind);
  return result;
};

const TARGETS = { xs: [0.3, 2.9, 4.4, 7.8, 3, 12], ys: [0.2, 3.1, 1.6, 5.5, 1.2, -3] };

const predict = (asked: Survey, { xs, ys } = TARGETS, level = 'l1') =>
  fieldOf(fit(asked).fitted, level, 1).predict(xs, ys, { variance: true });

describe('source kriging', () => {
  it.each([
    [1, 0.6],
    [2, 2],
    [3, 80],
  ])('finds fall-off 1/r^%d, strengths and field again from a few readings', (n, a) => {
    const truth = field({ n, a });
    const { fitted } = fit(survey(read(truth)));
    const [line, kettle] = fitted.sources!.model.terms;
    expect([line.exponent, kettle.exponent]).toEqual([n, 3]);
    // What is known of appliances before any reading bends a strength by less than a meter can tell.
    expect(Math.sqrt(line.strength) / a).toBeCloseTo(1, 2);
    expect(Math.sqrt(kettle.strength) / 0.03).toBeCloseTo(1, 2);
    const { mean } = fieldOf(fitted, 'l1', 1).predict(TARGETS.xs, TARGETS.ys, { variance: false });
    TARGETS.xs.forEach((x, i) => {
      expect(Math.abs(mean[i] - Math.log(truth(x, TARGETS.ys[i], 1)))).toBeLessThan(0.005);
    });
  });

  it('without a mark is kriging to the last digit', () => {
    const readings = read(field());
    const plain = fit({ ...UNMARKED, readings, method: 'kriging' });
    const asked = fit({ ...UNMARKED, readings, method: 'source-kriging' });
    expect(asked.fitted.method).toBe('source-kriging');
    expect(asked.evidence.looRmseLn).toBe(plain.evidence.looRmseLn);
    const of = (one: typeof plain) =>
      fieldOf(one.fitted, 'l1', 1).predict(TARGETS.xs, TARGETS.ys, { variance: true });
    expect(of(asked)).toEqual(of(plain));
  });

  it('turns and moves with the plan, and does not depend on any order', () => {
    const readings = BUILDS['along walls'](5, 30).readings;
    const { marked } = BUILDS['along walls'](5, 30);
    const before = predict(survey(readings, marked));
    const turn = (x: number, y: number) => [40 - y, x - 25] as const;
    const turned = predict(
      survey(
        readings.map((one) => ({ ...one, at: turn(...one.at) })),
        marked.map((one) => ({ ...one, path: one.path.map(([x, y]) => turn(x, y)) })),
      ),
      {
        xs: TARGETS.xs.map((x, i) => turn(x, TARGETS.ys[i])[0]),
        ys: TARGETS.xs.map((x, i) => turn(x, TARGETS.ys[i])[1]),
      },
    );
    const shuffled = predict(survey([...readings].reverse(), [...marked].reverse()));
    for (const other of [turned, shuffled])
      before.mean.forEach((value, i) => {
        expect(other.mean[i]).toBeCloseTo(value, 6);
        expect(other.variance![i]).toBeCloseTo(before.variance![i], 6);
      });
  });

  it('has covariances that agree with its variances, none of them negative', () => {
    const { readings, marked } = BUILDS.wandering(3, 24);
    for (const level of ['l1', 'l2']) {
      const own = fieldOf(fit(survey(readings, marked)).fitted, level, 1);
      const { mean, variance } = own.predict(TARGETS.xs, TARGETS.ys, { variance: true });
      const joint = own.draws(TARGETS)[0];
      const m = mean.length;
      for (let i = 0; i < m; i++) {
        expect(variance![i]).toBeGreaterThan(0);
        expect(joint.mean[i]).toBeCloseTo(mean[i], 12);
        expect(joint.covariance[i * m + i]).toBeCloseTo(variance![i], 9);
        for (let j = 0; j < m; j++) {
          expect(joint.covariance[i * m + j]).toBeCloseTo(joint.covariance[j * m + i], 9);
          expect(joint.covariance[i * m + j] ** 2).toBeLessThanOrEqual(
            variance![i] * variance![j] * (1 + 1e-9),
          );
        }
      }
    }
  });
});

describe('marks that the readings contradict', () => {
  const readings = read(field({ a: 6, c: 0 }));

  it('are silent, with no more than a small share, and leave the rest as it is', () => {
    const { evidence } = fit(survey(readings));
    const [line, kettle] = evidence.sources;
    expect(line).toMatchObject({ id: 's1', falloff: 2, fitted: true, silent: false });
    expect(line.share[0]).toBeGreaterThan(0.1);
    expect(line.share[1]).toBeGreaterThan(0.9);
    expect(kettle).toMatchObject({ id: 's2', silent: true, share: [0, expect.any(Number)] });
    expect(kettle.share[1]).toBeLessThan(0.1);
  });

  it('are told whatever method draws the map, and no mark tells nothing', () => {
    expect(fit(survey(readings, [LINE, KETTLE], 'kriging')).evidence.sources[1].silent).toBe(true);
    expect(fit(survey(readings, [], 'auto')).evidence.sources).toEqual([]);
  });
});

describe('shares', () => {
  it('hold the true share, and those of one home come to no more than all', () => {
    const truth = field({ c: 0.05 });
    const [line] = fit(survey(read(truth))).evidence.sources;
    const shares = SPOTS.map(([x, y]) => (2 / Math.hypot(y + 6, 6) ** 2 / truth(x, y, 1)) ** 2);
    const mean = shares.reduce((sum, share) => sum + share, 0) / shares.length;
    expect(line.share[0]).toBeLessThan(mean);
    expect(line.share[1]).toBeGreaterThan(mean);
    expect(line.share[1]).toBeLessThanOrEqual(1);
  });
});

describe('levels', () => {
  it('share their sources: a floor nobody read follows the line, and is shown above what was read', () => {
    const truth = field({ c: 0.01 });
    const { fitted } = fit(survey(read(truth)));
    const above = fieldOf(fitted, 'l2', 1);
    const { mean } = above.predict([2, 6], [1, 5], { variance: false });
    expect(Math.abs(mean[0] - Math.log(truth(2, 1, 3.8)))).toBeLessThan(0.05);
    expect(Math.abs(mean[1] - Math.log(truth(6, 5, 3.8)))).toBeLessThan(0.05);
    expect([...above.support([2, 30], [1, 30]).reason]).toEqual([0, 2]);
    const kriged = fieldOf(fit(survey(read(truth), [LINE], 'kriging')).fitted, 'l2', 1);
    expect([...kriged.support([2], [1]).reason]).toEqual([3]);
  });
});

describe('while something is dragged', () => {
  it('exponents stay, strengths follow, and a source that moves moves the map', () => {
    const truth = field();
    const before = survey(read(truth));
    const { fitted } = fit(before);
    const moved = withSurvey(fitted, { ...before, sources: [LINE, { ...KETTLE, path: [[6, 4]] }] });
    const exponents = (one: typeof fitted) => one.sources!.model.terms.map(({ exponent }) => exponent);
    expect(exponents(moved)).toEqual(exponents(fitted));
    expect(moved.variogram).toBe(fitted.variogram);
    const at = (one: typeof fitted) => fieldOf(one, 'l1', 1).predict([3], [2], { variance: false }).mean[0];
    expect(at(moved)).toBeLessThan(at(fitted) - 0.5);
    const still = withSurvey(fitted, before);
    expect(still.sources!.model).toEqual(fitted.sources!.model);
  });

  it('a source that was not there before falls as its kind does', () => {
    const asked = survey(read(field()), [LINE]);
    const { fitted } = fit(asked);
    const [, kettle] = withSurvey(fitted, { ...asked, sources: [LINE, KETTLE] }).sources!.model.terms;
    expect(kettle.exponent).toBe(3);
  });
});

describe('leaving out one place', () => {
  it('is nearly what is found by fitting the strengths without it', () => {
    const apart: number[] = [];
    for (let seed = 1; seed <= 8; seed++) {
      const { readings, marked } = BUILDS['along walls'](seed, 30);
      const places = observe(readings);
      const marks = { sources: marked, elevations: ELEVATIONS, walls: [] };
      const whole = fitRemainder(fitSources(places, marks), places);
      const given = marked.map((source, k) => ({ ...source, falloff: whole.model.terms[k].exponent }));
      sourceWithout(whole, places).forEach((prediction, i) => {
        const others = places.filter((_, j) => j !== i);
        const model = fitSources(others, { ...marks, sources: given });
        const without = sourceField(
          { ...fitRemainder(model, others), variogram: whole.variogram },
          others,
          'l1',
          1,
        );
        const { mean, variance } = without.both({ xs: [places[i].x], ys: [places[i].y] });
        apart.push(Math.abs(prediction!.predicted - mean[0]) / Math.sqrt(variance[0]));
      });
    }
    apart.sort((a, b) => a - b);
    // In standard deviations of the prediction.
    expect(apart[Math.floor(0.5 * apart.length)]).toBeLessThan(0.02);
    expect(apart[Math.floor(0.95 * apart.length)]).toBeLessThan(0.2);
  });

  it('knows that a single reading beside an appliance is all that speaks for it', () => {
    const chance = random(3);
    const far = SPOTS.filter(([x, y]) => Math.hypot(x - 3, y - 2) > 1);
    const readings = read(
      (x, y, z) => field({ c: 0.1 })(x, y, z) * Math.exp(0.05 * chance.normal()),
      [[3.1, 2.3], ...far],
    );
    const { evidence } = fit(survey(readings));
    const [beside, ...others] = evidence.rows.map(({ low, high }) => high / low);
    expect(beside).toBeGreaterThan(1.3 * others.toSorted((a, b) => a - b)[Math.floor(others.length / 2)]);
  });
});
