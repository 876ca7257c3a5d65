import { BUILDS, type BuildName } from '../support/generators/builds';
import { contains } from '../../src/engine/geometry/polygon';
import { FULL_EFFORT, samplingQuestion, type Effort } from '../../src/engine/mapping/sourceSampling/question';
import { fieldOf } from '../../src/engine/mapping/field';
import { fitSurvey } from '../../src/engine/mapping/fitSurvey';
import { HALF_90 } from '../../src/engine/mapping/interval';
import { meanOverDraws } from '../../src/engine/dose/meanOverDraws';
import { random } from '../../src/engine/algebra/random';
import { zoneDose } from '../../src/engine/dose/dose';
import { READ_AT, surveyOf, type GeneratedHome } from '../support/generators/generatedHome';
import { sampledField } from '../../src/engine/mapping/sourceSampling/sampledField';
import { sampleSources } from '../../src/engine/mapping/sourceSampling/sampleSources';
import type { MeanField } from '../../src/engine/dose/meanOverDraws';
import type { MethodChoice } from '../../src/engine/mapping/survey';
import type { Point } from '../../src/engine/geometry/point';

/** How far maps lie from a known field. */
export interface Accuracy {
  homes: number;
  /** Root mean square of log10 (estimate / truth) over a home's cells, over homes. */
  median: number;
  p90: number;
  worst: { error: number; seed: number };
  /** Share of truth inside the 90 % interval, mean over homes. */
  coverage: number;
  /** Mean width of that interval, log10 of high / low. */
  width: number;
  /** Processor time, ms, mean over homes. */
  fitMs: number;
  mapMs: number;
  /** Of the mean field over beds: |estimate ÷ truth − 1|, and the share of truth inside the 90 % interval. */
  bedMedian: number;
  bedP90: number;
  bedCoverage: number;
}

export interface Asked {
  build?: BuildName;
  homes?: number;
  readings?: number;
  method?: MethodChoice;
  /** Whether the sources that can be seen are marked. */
  marked?: boolean;
  /** Of source sampling. */
  effort?: Effort;
}

const CELL = 0.4;

/** The sampler's seed, the same in every home. */
const SEED = 7;

/** Map `homes` homes of a build (seeds 1, 2, …) and hold the maps against the true fields. */
export function measureAccuracy({
  build = 'along walls',
  homes = 40,
  readings = 36,
  method = 'auto',
  marked = false,
  effort = FULL_EFFORT,
}: Asked = {}): Accuracy {
  const each = Array.from({ length: homes }, (_, i) => {
    const home = BUILDS[build](i + 1, readings);
    return { seed: i + 1, ...measureHome(home, method, marked, effort) };
  });
  const errors = each.map(({ error }) => error);
  const beds = each.flatMap(({ beds }) => beds);
  const bedErrors = beds.map(({ error }) => error);
  const worst = each.reduce((most, one) => (one.error > most.error ? one : most));
  return {
    homes,
    median: quantile(errors, 0.5),
    p90: quantile(errors, 0.9),
    worst: { error: worst.error, seed: worst.seed },
    coverage: mean(each.map(({ coverage }) => coverage)),
    width: mean(each.map(({ width }) => width)),
    fitMs: mean(each.map(({ fitMs }) => fitMs)),
    mapMs: mean(each.map(({ mapMs }) => mapMs)),
    bedMedian: quantile(bedErrors, 0.5),
    bedP90: quantile(bedErrors, 0.9),
    bedCoverage: mean(beds.map(({ inside }) => Number(inside))),
  };
}

/** Between the two values next to it. */
export function quantile(values: readonly number[], share: number): number {
  const sorted = [...values].sort((a, b) => a - b);
  const place = share * (sorted.length - 1);
  const below = Math.floor(place);
  const above = Math.min(below + 1, sorted.length - 1);
  return sorted[below] + (place - below) * (sorted[above] - sorted[below]);
}

const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;

function measureHome(home: GeneratedHome, method: MethodChoice, marked: boolean, effort: Effort) {
  const { xs, ys } = cells(home);
  const started = processorMs();
  const map = fitted(home, method, marked, effort);
  const fit = processorMs();
  const { mean: ln, variance } = map.both({ xs, ys });
  const drawn = processorMs();
  let square = 0;
  let inside = 0;
  let width = 0;
  xs.forEach((x, i) => {
    const off = ln[i] - Math.log(home.truth(x, ys[i], READ_AT));
    const half = HALF_90 * Math.sqrt(variance[i]);
    square += (off / Math.LN10) ** 2;
    if (Math.abs(off) <= half) inside++;
    width += (2 * half) / Math.LN10;
  });
  return {
    error: Math.sqrt(square / xs.length),
    coverage: inside / xs.length,
    width: width / xs.length,
    fitMs: fit - started,
    mapMs: drawn - fit,
    beds: bedsIn(home).map((cells) => {
      const truth = mean(cells.map(([x, y]) => home.truth(x, y, READ_AT)));
      const { median, low, high } = map.meanOver(cells);
      return { error: Math.abs(median / truth - 1), inside: truth >= low && truth <= high };
    }),
  };
}

/** Four places for a body, 0.6 m by 2 m, anywhere in the home's rooms: middles of 0.2 m squares. */
function bedsIn({ rooms, seed }: GeneratedHome): Point[][] {
  const chance = random(900_000 + seed);
  return Array.from({ length: 4 }, () => {
    const room = rooms[chance.below(rooms.length)];
    const [x, y] = [
      chance.between(room[0][0] + 0.3, room[2][0] - 0.3),
      chance.between(room[0][1] + 1, room[2][1] - 1),
    ];
    return Array.from({ length: 30 }, (_, i): Point => [
      x - 0.2 + 0.2 * (i % 3),
      y - 0.9 + 0.2 * Math.floor(i / 3),
    ]);
  });
}

interface Fitted {
  both(points: { xs: number[]; ys: number[] }): { mean: Float64Array; variance: Float64Array };
  meanOver(cells: Point[]): MeanField;
}

/** A home's survey made a map by one method. */
function fitted(home: GeneratedHome, method: MethodChoice, marked: boolean, effort: Effort): Fitted {
  const survey = surveyOf(home, method, marked);
  if (method === 'source-sampling') {
    const question = samplingQuestion(survey, { seed: SEED, effort });
    const field = sampledField(question, sampleSources(question)!, READ_AT);
    return {
      both: (points) => field.both(points),
      meanOver: (cells) =>
        meanOverDraws(
          field.draws({ xs: cells.map(([x]) => x), ys: cells.map(([, y]) => y) }),
          cells.map(() => 1 / cells.length),
        ),
    };
  }
  const result = fitSurvey(survey);
  if (!result.ok) throw new Error(`home ${home.seed}: ${result.problem.kind}`);
  const field = fieldOf(result.fitted, 'l1', READ_AT);
  return {
    both({ xs, ys }) {
      const { mean, variance } = field.predict(xs, ys, { variance: true });
      return { mean, variance: variance! };
    },
    meanOver(cells) {
      const { mean: median, low, high } = zoneDose(field, { ring: [], cells }, 1);
      return { median, low, high };
    },
  };
}

const processorMs = (): number => {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
};

/** Middles of cells that lie in a room. */
export function cells({ rooms }: GeneratedHome): { xs: number[]; ys: number[] } {
  const xs: number[] = [];
  const ys: number[] = [];
  const corners = rooms.flat();
  for (let x = CELL / 2; x < Math.max(...corners.map(([cx]) => cx)); x += CELL) {
    for (let y = CELL / 2; y < Math.max(...corners.map(([, cy]) => cy)); y += CELL) {
      if (!rooms.some((room) => contains(room, [x, y]))) continue;
      xs.push(x);
      ys.push(y);
    }
  }
  return { xs, ys };
}
