import { expect, test } from 'vitest';
import { BUILDS } from '../../support/generators/builds';
import { contains } from '../../../src/engine/geometry/polygon';
import { fieldOf } from '../../../src/engine/mapping/field';
import { fieldOfSources, type Sources } from '../../../src/engine/magnetics/fieldOfSources';
import { fitSurvey } from '../../../src/engine/mapping/fitSurvey';
import { HALF_90 } from '../../../src/engine/mapping/interval';
import { READ_AT, surveyOf, type GeneratedHome } from '../../support/generators/generatedHome';
import { sampleSurvey } from '../../../src/engine/mapping/sourceSampling/sampleSurvey';
import { whatIf } from '../../../src/engine/whatIf/whatIf';
import type { Conductor } from '../../../src/engine/magnetics/conductor';
import type { FittedSurvey } from '../../../src/engine/mapping/fitSurvey';

const HOMES = 5;
const STEP = 0.4;

const isStreet = ({ from, to }: Conductor) => Math.hypot(to[0] - from[0], to[1] - from[1]) > 40;

/** The home's sources without what was marked: the street line, or the first appliance. */
function without({ conductors, dipoles, ambient }: Sources, id: string): Sources {
  if (id === 'g0') return { conductors: conductors.filter((wire) => !isStreet(wire)), dipoles, ambient };
  return { conductors, dipoles: dipoles.slice(1), ambient };
}

/** Rms of log10 between a map and the field of some sources over the rooms, and the share of it inside the 90 % interval. */
function against(fitted: FittedSurvey, { rooms }: GeneratedHome, sources: Sources) {
  const [x1, y1] = [0, 1].map((axis) => Math.max(...rooms.flat().map((corner) => corner[axis])));
  const points: [number, number][] = [];
  for (let x = STEP / 2; x < x1; x += STEP)
    for (let y = STEP / 2; y < y1; y += STEP)
      if (rooms.some((room) => contains(room, [x, y]))) points.push([x, y]);
  const { mean, variance } = fieldOf(fitted, 'l1', READ_AT).predict(
    points.map(([x]) => x),
    points.map(([, y]) => y),
    { variance: true },
  );
  const misses = points.map(([x, y], i) => mean[i] - Math.log(fieldOfSources(sources, [x, y, READ_AT])));
  const rms = Math.sqrt(misses.reduce((sum, miss) => sum + miss * miss, 0) / misses.length) / Math.LN10;
  const inside = misses.filter((miss, i) => Math.abs(miss) <= HALF_90 * Math.sqrt(variance![i])).length;
  return { rms, cover: inside / misses.length };
}

const median = (values: number[]) => values.toSorted((a, b) => a - b)[Math.floor(values.length / 2)];

/** Homes whose field is known by the law of Biot and Savart, read with all sources on. */
const homes = Array.from({ length: HOMES }, (_, i) => {
  const home = BUILDS['along walls'](i + 1, 36);
  const survey = surveyOf(home, 'source-sampling', true);
  const maps = [
    fitSurvey({ ...survey, method: 'source-kriging' }),
    fitSurvey(survey, undefined, sampleSurvey(survey)),
  ].map((fit) => {
    if (!fit.ok) throw new Error(fit.problem.kind);
    return fit.fitted;
  });
  return { home, maps };
});

/** Mapped as without a source: against the field that the rest of the sources really make. */
test.each(['g0', 'g1'])(
  'a map without the source %s is nearer to the field without it than the map as it is',
  (id) => {
    const rows = homes.map(({ home, maps }) => {
      const rest = without(home.sources, id);
      return maps.map((fitted) => {
        const then = whatIf(fitted, [{ id, scale: 0, path: null }]);
        if (!then.ok) throw new Error(then.problem.kind);
        return {
          asItIs: against(fitted, home, home.sources),
          unchanged: against(fitted, home, rest),
          then: against(then.fitted, home, rest),
        };
      });
    });
    ['source kriging', 'source sampling'].forEach((method, k) => {
      const of = (pick: (row: (typeof rows)[number][number]) => number) =>
        median(rows.map((row) => pick(row[k])));
      const asItIs = of((row) => row.asItIs.rms);
      const unchanged = of((row) => row.unchanged.rms);
      const then = of((row) => row.then.rms);
      const cover = of((row) => row.then.cover);
      console.error(
        `${method}, ${id} off, ${HOMES} homes from seed 1: rms log10 of the what-if map ${then.toFixed(3)}, ` +
          `cover ${cover.toFixed(2)}; the map as it is ${asItIs.toFixed(3)}; taken for the field without it ${unchanged.toFixed(3)}`,
      );
      expect(cover).toBeGreaterThan(0.8);
      // What source kriging gives to a street line, even all over the home, the background may as well have made.
      if (method === 'source kriging' && id === 'g0') return;
      expect(then).toBeLessThan((method === 'source kriging' ? 1 : 0.8) * unchanged);
      expect(then).toBeLessThan(2.5 * asItIs);
    });
  },
  120_000,
);
