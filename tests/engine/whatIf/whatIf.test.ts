import { describe, expect, test } from 'vitest';
import { arrange } from '../../../src/engine/arranging/arrange';
import { ambientFloor } from '../../../src/engine/mapping/sourceSampling/ambientFloor';
import { bed, box, readingsOf, request, room } from '../arranging/homes';
import { columnOf } from '../../../src/engine/mapping/sourceKriging/sourceTerms';
import { conductorField } from '../../../src/engine/magnetics/conductor';
import { dipoleField } from '../../../src/engine/magnetics/dipole';
import { fieldOf } from '../../../src/engine/mapping/field';
import { fitSurvey, type FittedSurvey } from '../../../src/engine/mapping/fitSurvey';
import { samplingQuestion } from '../../../src/engine/mapping/sourceSampling/question';
import { UNMARKED } from '../../support/readings';
import { type SourceChange } from '../../../src/engine/whatIf/sourceChange';
import { whatIf } from '../../../src/engine/whatIf/whatIf';
import type { MarkedSource } from '../../../src/engine/mapping/survey';
import type { Point } from '../../../src/engine/geometry/point';
import type { Sample } from '../../../src/engine/mapping/sourceSampling/samples';

const cupboard: MarkedSource = {
  id: 's1',
  kind: 'point',
  level: 'l1',
  path: [[0.5, 2]],
  height: 1,
  falloff: 2,
  origin: 'house',
};
const street: MarkedSource = {
  ...cupboard,
  id: 's2',
  kind: 'line',
  path: [
    [12, -20],
    [12, 20],
  ],
  falloff: 1,
  origin: 'outside',
};

const r = (x: number, y: number, [sx, sy]: Point) => Math.max(0.3, Math.hypot(x - sx, y - sy));
const own = (x: number, y: number, at: Point = [0.5, 2]) => 0.25 / r(x, y, at) ** 2;
const outside = (x: number) => 0.5 / (12 - x);
const both = (x: number, y: number) => Math.hypot(own(x, y), outside(x), 0.01);

const survey = {
  ...UNMARKED,
  readings: readingsOf(both, [0, 0, 9, 4], 0.9),
  sources: [cupboard, street],
  method: 'source-kriging' as const,
};
const fit = fitSurvey(survey);
if (!fit.ok) throw new Error(fit.problem.kind);
const { fitted } = fit;

const changed = (survey: FittedSurvey, ...changes: SourceChange[]): FittedSurvey => {
  const result = whatIf(survey, changes);
  if (!result.ok) throw new Error(result.problem.kind);
  return result.fitted;
};
const off = (id: string): SourceChange => ({ id, scale: 0, path: null });
const at = (survey: FittedSurvey, x: number, y: number) =>
  Math.exp(fieldOf(survey, 'l1', 1).predict([x], [y], { variance: false }).mean[0]);
const sd = (survey: FittedSurvey, x: number, y: number) =>
  Math.sqrt(fieldOf(survey, 'l1', 1).predict([x], [y], { variance: true }).variance![0]);

const places: Point[] = [
  [1.6, 2.3],
  [2.4, 1],
  [4.1, 3],
  [7.3, 1.2],
];

describe('what if a marked source, in source kriging', () => {
  test('is switched off: what the rest gives is left', () => {
    const then = changed(fitted, off('s1'));
    for (const [x, y] of places)
      expect(at(then, x, y) / Math.hypot(outside(x), 0.01), `${x} ${y}`).toBeCloseTo(1, 1);
  });

  test('is switched off: exactly its own term goes from B², the kriged remainder stays a factor', () => {
    const { model } = fitted.sources!;
    expect(model.background).toBeGreaterThan(0);
    const then = changed(fitted, off('s1'));
    for (const [x, y] of places) {
      const square = (kept: typeof model.terms) =>
        kept.reduce(
          (sum, term) => sum + term.strength * columnOf(term, { xs: [x], ys: [y], zs: [1] })[0],
          model.background,
        );
      const factor = at(fitted, x, y) ** 2 / square(model.terms);
      const rest = square(model.terms.filter(({ id }) => id !== 's1'));
      expect(at(then, x, y) ** 2 / (factor * rest)).toBeCloseTo(1, 11);
    }
  });

  test('is halved', () => {
    const half = changed(fitted, { id: 's1', scale: 0.5, path: null });
    for (const [x, y] of places)
      expect(at(half, x, y) / Math.hypot(own(x, y) / 2, outside(x), 0.01), `${x} ${y}`).toBeCloseTo(1, 1);
  });

  test('is moved, and moved back: the same map', () => {
    const to: Point = [6, 3.5];
    const moved = changed(fitted, { id: 's1', scale: 1, path: [to] });
    for (const [x, y] of places)
      expect(at(moved, x, y) / Math.hypot(own(x, y, to), outside(x), 0.01), `${x} ${y}`).toBeCloseTo(1, 1);
    const back = changed(moved, { id: 's1', scale: 1, path: cupboard.path });
    for (const [x, y] of places) {
      expect(at(back, x, y) / at(fitted, x, y)).toBeCloseTo(1, 12);
      expect(sd(back, x, y) / sd(fitted, x, y)).toBeCloseTo(1, 12);
    }
  });

  test('both off: what no source explains is left, a number still', () => {
    const then = changed(fitted, off('s1'), off('s2'));
    for (const [x, y] of places) expect(at(then, x, y)).toBeLessThan(at(fitted, x, y) / 2);
    expect(sd(then, 2, 2)).toBeGreaterThan(0);
  });

  test('is one that nothing is heard of: the same map, and it is said', () => {
    const result = whatIf(fitted, [off('s9')]);
    expect(result).toMatchObject({ ok: true, unheard: ['s9'] });
    for (const [x, y] of places)
      expect(at(changed(fitted, off('s9')), x, y)).toBeCloseTo(at(fitted, x, y), 12);
  });

  test('an arrangement on it goes where the source was', () => {
    const home = (survey: typeof fitted) =>
      arrange(
        request({ fitted: survey, rooms: [room('r1', box(0, 0, 9, 4))], pieces: [bed({ at: [5, 3] })] }),
      );
    const now = home(fitted).pieces[0].at[0];
    const then = home(changed(fitted, off('s1')));
    expect(now).toBeGreaterThan(2);
    expect(then.pieces[0].at[0]).toBeLessThan(now);
    expect(then.after).toBeLessThan(home(fitted).after);
  });
});

describe('a map that knows no sources', () => {
  const without = { ...fitted, method: 'inverse-distance' as const, sources: null };

  test('cannot say what would be, by name', () => {
    expect(whatIf(without, [off('s1')])).toEqual({
      ok: false,
      problem: { kind: 'map-without-sources', method: 'inverse-distance' },
    });
  });

  test('is the very map where nothing changes', () => {
    expect(whatIf(without, [{ id: 's1', scale: 1, path: null }])).toEqual({
      ok: true,
      fitted: without,
      unheard: [],
    });
  });
});

describe('what if a marked source, in samples', () => {
  /** 0.4 A·m² upwards, over its mark by `up` times 0.12 m; and the street line, 1.5 A, no load that matters. */
  const appliance = (k: number, up = 0) => ({
    slot: `appliance ${k}`,
    latents: [0, 0, 0, 1, 1, 0, 0, 0, up],
  });
  const line = { slot: 'line 1', latents: [0, 1, 0, -30, 1, 0, -30, 1, 0, 0, 0, 0] };
  const sources: MarkedSource[] = [
    { ...cupboard, falloff: 3 },
    { ...cupboard, id: 's3', path: [[4, 0.5]], falloff: 3 },
    street,
  ];
  const all: Sample['sources'][] = [[appliance(1), appliance(2), line], [appliance(1, 1), line], [line]];
  const weights = [0.5, 0.3, 0.2];
  const question = samplingQuestion(
    { ...survey, sources },
    { seed: 1, effort: { chains: 1, burn: 1, keep: 1, samples: 3 } },
  );
  const sampled: FittedSurvey = {
    ...fitted,
    method: 'source-sampling',
    sources: null,
    sampled: {
      question,
      samples: {
        samples: all.map((one, t) => ({
          weight: weights[t],
          logLikelihood: 0,
          // s = 0.05, ρ = 1.
          remainder: 4,
          floor: 0,
          sources: one,
        })),
        slots: [],
      },
      elevations: { l1: 0 },
      without: [],
    },
  };
  const draws = (survey: FittedSurvey, x: number, y: number) =>
    fieldOf(survey, 'l1', 1)
      .draws({ xs: [x], ys: [y] })
      .map(({ mean }) => mean[0]);

  /** The phasor sum by the laws of conductor and dipole, and the ambient floor; a sample's sources, changed or not. */
  const truth = (
    one: Sample['sources'],
    [x, y]: Point,
    { scale = 1, place = [0.5, 2] as Point }: { scale?: number; place?: Point } = {},
  ) => {
    const dipoles = one.flatMap(({ slot, latents }) => {
      if (slot === 'line 1') return [];
      const mine = slot === 'appliance 1';
      const [px, py] = mine ? place : [4, 0.5];
      return [
        {
          at: [px, py, 1 + 0.12 * latents[8]] as [number, number, number],
          moment: [0, 0, 0.4 * (mine ? scale : 1)] as [number, number, number],
          degrees: 0,
        },
      ];
    });
    // A line of the street is taken to go on for 40 m.
    const wire = {
      from: [12, -60, 1] as const,
      to: [12, 60, 1] as const,
      amperes: 1.5,
      degrees: 0,
      endless: false,
    };
    const fields = [conductorField([wire], [x, y, 1]), dipoleField(dipoles, [x, y, 1])];
    const square = [0, 1, 2].reduce(
      (sum, axis) =>
        sum +
        fields.reduce((part, field) => part + field.re[axis], 0) ** 2 +
        fields.reduce((part, field) => part + field.im[axis], 0) ** 2,
      ambientFloor(0) ** 2,
    );
    return 0.5 * Math.log(square);
  };

  test('is moved nowhere, or not weaker: the same map to rounding', () => {
    const same = changed(sampled, { id: 's1', scale: 1, path: cupboard.path });
    for (const [x, y] of places) {
      expect(at(same, x, y) / at(sampled, x, y)).toBeCloseTo(1, 12);
      expect(sd(same, x, y) / sd(sampled, x, y)).toBeCloseTo(1, 12);
    }
    same.places.forEach(({ ln }, i) => expect(ln).toBeCloseTo(sampled.places[i].ln, 12));
  });

  test.each([
    ['off', { scale: 0 }],
    ['halved', { scale: 0.5 }],
    ['moved', { place: [6, 3.5] as Point }],
  ])('is %s: in every sample its own field changes by the laws of physics, and nothing else', (_, to) => {
    const then = changed(sampled, {
      id: 's1',
      scale: 'scale' in to ? to.scale : 1,
      path: 'place' in to ? [to.place] : null,
    });
    for (const [x, y] of places) {
      const [before, after] = [draws(sampled, x, y), draws(then, x, y)];
      all.forEach((one, t) => {
        const change = truth(one, [x, y], to) - truth(one, [x, y]);
        expect(after[t] - before[t], `sample ${t} at ${x} ${y}`).toBeCloseTo(change, 6);
      });
    }
  });

  test('is moved there and back: the same map', () => {
    const there = changed(sampled, { id: 's1', scale: 0.5, path: [[6, 3.5]] });
    const back = changed(there, { id: 's1', scale: 2, path: cupboard.path });
    for (const [x, y] of places) expect(at(back, x, y) / at(sampled, x, y)).toBeCloseTo(1, 12);
    back.places.forEach(({ ln }, i) => expect(ln).toBeCloseTo(sampled.places[i].ln, 12));
  });

  test('is off: far from it nothing changes', () => {
    const then = changed(sampled, off('s1'));
    expect(at(then, 200, 3) / at(sampled, 200, 3)).toBeCloseTo(1, 6);
  });

  test('is heard in no sample: said so', () => {
    const none = { ...sampled.sampled!, samples: { ...sampled.sampled!.samples } };
    none.samples.samples = none.samples.samples.map((sample) => ({ ...sample, sources: [line] }));
    expect(whatIf({ ...sampled, sampled: none }, [off('s1'), off('s2')])).toMatchObject({ unheard: ['s1'] });
  });
});
