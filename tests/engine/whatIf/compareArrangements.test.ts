import { describe, expect, test } from 'vitest';
import { bed, box, desk, readingsOf, room } from '../arranging/homes';
import { BUILDS } from '../../support/generators/builds';
import { compare } from '../../../src/engine/arranging/compare';
import { compareArrangements, type ArrangementWorth } from '../../../src/engine/whatIf/compareArrangements';
import { fieldOf } from '../../../src/engine/mapping/field';
import { fieldsOf } from '../../../src/engine/dose/fieldAt';
import { fitSurvey, type FittedSurvey } from '../../../src/engine/mapping/fitSurvey';
import { mapOver } from '../../../src/engine/arranging/mapOver';
import { pieceDose } from '../../../src/engine/dose/pieceDose';
import { random } from '../../../src/engine/algebra/random';
import { choleskyWithJitter } from '../../../src/engine/algebra/cholesky';
import { sampleSources } from '../../../src/engine/mapping/sourceSampling/sampleSources';
import { samplingQuestion } from '../../../src/engine/mapping/sourceSampling/question';
import { surveyOf } from '../../support/generators/generatedHome';
import { UNMARKED } from '../../support/readings';
import { whatIf } from '../../../src/engine/whatIf/whatIf';
import { zoneOf } from '../../../src/engine/dose/zones';
import type { Put } from '../../../src/engine/arranging/place';
import type { ArrangePiece } from '../../../src/engine/arranging/request';

const home = BUILDS['along walls'](3, 30);
const survey = surveyOf(home, 'source-sampling', true);
const question = samplingQuestion(survey, {
  seed: 1,
  effort: { chains: 6, burn: 120, keep: 60, samples: 30 },
});
const fit = fitSurvey({ ...survey, method: 'source-kriging' });
if (!fit.ok) throw new Error(fit.problem.kind);
const kriged = fit.fitted;
const sampled: FittedSurvey = {
  ...kriged,
  method: 'source-sampling',
  sources: null,
  meanSquareZ: 1,
  sampled: { question, samples: sampleSources(question)!, elevations: survey.elevations, without: [] },
};

const pieces: ArrangePiece[] = [
  bed({
    size: [1.4, 2],
    at: [1.2, 1.2],
    uses: [
      { who: 'A', side: 'left', hours: 8 },
      { who: 'B', side: 'right', hours: 7 },
    ],
  }),
  desk({ at: [4, 3], uses: [{ who: 'B', side: 'middle', hours: 3 }] }),
  bed({ id: 'seat', kind: 'seat', at: [3, 1], uses: [] }),
];
const elsewhere: Put[] = [{ id: 'bed', level: 'l1', at: [3.5, 2.5], angle: 90 }];
const off = { id: 'g0', scale: 0, path: null };
const worths = (
  fitted: FittedSurvey,
  ...arrangements: Parameters<typeof compareArrangements>[0]['arrangements']
) => compareArrangements({ fitted, pieces, arrangements }) as ArrangementWorth[];
const now = { id: 'now', places: [], sources: [] };
const moved = { id: 'v1', places: elsewhere, sources: [] };

describe('arrangements compared', () => {
  test.each([
    ['source kriging', kriged],
    ['source sampling', sampled],
  ])('by %s have the doses and odds that a move has', (_, fitted) => {
    const [first, other] = worths(fitted, now, moved);
    const fieldAt = fieldsOf(fitted);
    const plan = { rooms: [room('r1', box(0, 0, 10, 10))], pieces };
    const move = compare(
      plan,
      mapOver(plan, fieldAt, fitted),
      (piece) => piece,
      (piece) => elsewhere.find(({ id }) => id === piece.id) ?? piece,
    );
    expect(first.odds).toBeNull();
    expect(first.whole!.dose).toBeCloseTo(move.whole.before!.dose, 9);
    expect(other.whole!.dose).toBeCloseTo(move.whole.after!.dose, 9);
    expect(other.whole!.high).toBeCloseTo(move.whole.after!.high, 9);
    expect(other.odds).toBeCloseTo(move.whole.odds!, 9);
    expect(other.people.map(({ who }) => who)).toEqual(['A', 'B']);
    other.people.forEach(({ dose, odds }, i) => {
      expect(dose.dose).toBeCloseTo(move.people[i].after!.dose, 9);
      expect(odds).toBeCloseTo(move.people[i].odds!, 9);
    });
    expect(other.pieces.map(({ id }) => id)).toEqual(['bed', 'desk']);
    const put = { ...pieces[0], ...elsewhere[0] };
    const zones = put.uses.map(({ who, hours, side }) => ({
      who,
      hours,
      zone: zoneOf('bed', put, put.size, side),
    }));
    const alone = pieceDose(fieldAt, { id: 'bed', level: 'l1', height: put.height, uses: zones })!;
    expect(other.pieces[0].dose.dose).toBeCloseTo(alone.dose.dose, 9);
    expect(other.apart).toBe(false);
  });

  test('with a source off have the doses of the map without it', () => {
    const [, then] = worths(sampled, now, { ...now, id: 'v1', sources: [off] });
    const without = whatIf(sampled, [off]);
    if (!without.ok) throw new Error();
    const [alone] = worths(without.fitted, now);
    expect(then.whole).toEqual(alone.whole);
    expect(then.people.map(({ dose }) => dose)).toEqual(alone.people.map(({ dose }) => dose));
    expect(then.unheard).toEqual([]);
  });

  /** Both maps drawn together: in a sample one remainder at all cells, with the sources on and with one off. */
  test.each([
    [[2.5, 4], 0.7],
    [[4, 4], 0.8],
    [[1.2, 1.2], 0.9],
  ] as const)(
    'with a bed at %s and a source × %s are as likely lower as in 20,000 draws of both maps',
    (at, scale) => {
      const places = [{ id: 'bed', level: 'l1', at, angle: 90 }];
      const asked = { id: 'v1', places, sources: [{ ...off, scale }] };
      const [, then] = worths(sampled, now, asked);
      const other = whatIf(sampled, asked.sources);
      if (!other.ok) throw new Error();
      const seed = 4711;
      const chance = random(seed);
      const day = (places: readonly Put[]) =>
        [pieces[0], pieces[1]].flatMap((piece) => {
          const at = places.find(({ id }) => id === piece.id) ?? piece;
          return piece.uses.map((use) => ({
            hours: use.hours,
            height: piece.height,
            cells: zoneOf(piece.kind, at, piece.size, use.side).cells,
          }));
        });
      const stays = [
        ...day([]).map((stay) => ({ ...stay, fitted: sampled })),
        ...day(places).map((stay) => ({ ...stay, fitted: other.fitted })),
      ];
      const cells = stays.flatMap((stay) => stay.cells);
      const points = { xs: cells.map(([x]) => x), ys: cells.map(([, y]) => y) };
      // One remainder for all: that of the bed's height; the means each at its own.
      const remainders = fieldOf(sampled, 'l1', 0.6).draws(points);
      const means = stays.map(({ fitted, height, cells: own }) =>
        fieldOf(fitted, 'l1', height).draws({ xs: own.map(([x]) => x), ys: own.map(([, y]) => y) }),
      );
      const DRAWS = 20_000;
      let lower = 0;
      remainders.forEach(({ weight, covariance }, s) => {
        const n = cells.length;
        const { lower: L } = choleskyWithJitter(covariance, n, 1)!;
        const count = Math.round(DRAWS * weight);
        for (let draw = 0; draw < count; draw++) {
          const z = cells.map(() => chance.normal());
          const doses = [0, 0];
          let c = 0;
          stays.forEach(({ hours, cells: own }, k) => {
            own.forEach((_, j) => {
              let e = 0;
              for (let i = 0; i <= c; i++) e += L[c * n + i] * z[i];
              doses[k < stays.length / 2 ? 0 : 1] += (hours * Math.exp(means[k][s].mean[j] + e)) / own.length;
              c++;
            });
          });
          if (doses[1] < doses[0]) lower++;
        }
      });
      const drawn = lower / DRAWS;
      expect(drawn, `seed ${seed}`).toBeLessThan(0.99);
      expect(
        Math.abs(then.odds! - drawn),
        `seed ${seed}: ${then.odds} by formula, ${drawn} drawn`,
      ).toBeLessThan(0.03);
    },
  );

  test('by source kriging with a source off have doses, and no odds', () => {
    const [, then] = worths(kriged, now, { ...now, id: 'v1', sources: [off] });
    expect(then.whole!.dose).toBeGreaterThan(0);
    expect(then).toMatchObject({ odds: null, apart: true });
  });

  test('where the map knows no sources, only those that change one say so', () => {
    const fit = fitSurvey({
      ...UNMARKED,
      readings: readingsOf((x) => 0.3 / (x + 1), [0, 0, 5, 4]),
      method: 'inverse-distance',
    });
    if (!fit.ok) throw new Error();
    const all = compareArrangements({
      fitted: fit.fitted,
      pieces,
      arrangements: [now, moved, { ...now, id: 'v2', sources: [off] }],
    });
    expect(all[1]).toMatchObject({ id: 'v1', apart: false });
    expect((all[1] as ArrangementWorth).odds).toBeGreaterThan(0.5);
    expect(all[2]).toEqual({
      id: 'v2',
      without: { kind: 'map-without-sources', method: 'inverse-distance' },
    });
  });

  test('of a home where nobody uses anything have no dose', () => {
    const [one] = compareArrangements({ fitted: kriged, pieces: [pieces[2]], arrangements: [now] });
    expect(one).toMatchObject({ whole: null, people: [], pieces: [] });
  });
});
