import { BUILDS, type BuildName } from '../support/generators/builds';
import { fieldOf, type Field } from '../../src/engine/mapping/field';
import { fitSurvey } from '../../src/engine/mapping/fitSurvey';
import { FULL_EFFORT, samplingQuestion, type Effort } from '../../src/engine/mapping/sourceSampling/question';
import { observe } from '../../src/engine/mapping/observations';
import { random } from '../../src/engine/algebra/random';
import { READ_AT, readAt, surveyOf, type GeneratedHome } from '../support/generators/generatedHome';
import { sampledField } from '../../src/engine/mapping/sourceSampling/sampledField';
import { sampleSources } from '../../src/engine/mapping/sourceSampling/sampleSources';
import { siteOf } from '../../src/engine/nextReadings/site';
import { cells, quantile } from './accuracy';
import type { FittedSurvey } from '../../src/engine/mapping/fitSurvey';
import type { Point } from '../../src/engine/geometry/point';
import type { SurveyReading } from '../../src/engine/mapping/survey';

/** Root mean square of log10 (estimate / truth) over a home's cells, over homes. */
export interface Placed {
  homes: number;
  /** After the readings that came first, after as many again as were placed but spread like the first, and after those placed. */
  first: Spread;
  fixed: Spread;
  placed: Spread;
  /** Homes in which placing came nearer than spreading. */
  won: number;
}

interface Spread {
  median: number;
  p90: number;
}

export interface Asked {
  build?: BuildName;
  homes?: number;
  method: 'kriging' | 'source-kriging' | 'source-sampling';
  marked: boolean;
  first?: number;
  more?: number;
  /** Places chosen between two fits. */
  batch?: number;
}

/** The sampler's seed, the same in every home. */
const SEED = 7;

/** Of the fits that places are chosen from: half the chains do. */
const BETWEEN: Effort = { ...FULL_EFFORT, chains: FULL_EFFORT.chains / 2 };

/** Readings spread over known homes, then as many more placed by the rule as are spread in their stead (seeds 1, 2, …). */
export function measurePlaced(
  { build = 'along walls', homes = 60, method, marked, first = 24, more = 12, batch = 4 }: Asked,
  told: (home: number, errors: readonly number[]) => void = () => {},
): Placed {
  const each = Array.from({ length: homes }, (_, i) => {
    const home = BUILDS[build](i + 1, first + more);
    const mapped = (readings: readonly SurveyReading[], effort = FULL_EFFORT) =>
      fieldFrom(home, readings, method, marked, effort);
    const before = home.readings.slice(0, first);
    const start = mapped(before);
    const after = placedOn(home, before, start, more, batch, (readings) => mapped(readings, BETWEEN));
    const errors = [start, mapped(home.readings), mapped(after)].map((field) => errorOf(home, field));
    told(i + 1, errors);
    return errors;
  });
  const spread = (k: number): Spread => {
    const errors = each.map((one) => one[k]);
    return { median: quantile(errors, 0.5), p90: quantile(errors, 0.9) };
  };
  return {
    homes,
    first: spread(0),
    fixed: spread(1),
    placed: spread(2),
    won: each.filter(([, fixed, placed]) => placed < fixed).length,
  };
}

/** The readings and so many more, in batches with a fit between. */
function placedOn(
  home: GeneratedHome,
  before: readonly SurveyReading[],
  start: Field,
  more: number,
  batch: number,
  mapped: (readings: readonly SurveyReading[]) => Field,
): SurveyReading[] {
  const chance = random(700_000 + home.seed);
  const readings = [...before];
  for (let left = more; left > 0; left -= batch) {
    const field = left === more ? start : mapped(readings);
    for (const at of chosen(home, readings, field, Math.min(batch, left))) {
      const [read] = readAt([at], home.truth, chance);
      readings.push({ ...read, id: `m${readings.length + 1}` });
    }
  }
  return readings;
}

/** The places that take most from the doubt of the whole floor, every room counting alike. */
function chosen(
  home: GeneratedHome,
  readings: readonly SurveyReading[],
  field: Field,
  count: number,
): Point[] {
  const rooms = home.rooms.map((outline, i) => ({
    id: `r${i + 1}`,
    level: 'l1',
    use: 'living',
    outline,
    without: [],
  }));
  const request = {
    // Of the fit only the places are asked: the field is given.
    fitted: { places: observe(readings) } as unknown as FittedSurvey,
    rooms,
    fixtures: [],
    meter: readings[0].meter,
    height: READ_AT,
    floor: rooms.map(({ id }) => id),
    aims: [],
    count,
  };
  const site = siteOf(request, 'l1', [], () => field);
  return Array.from({ length: count }, () => {
    const free = site.spots.map((_, i) => i).filter((i) => site.free(i));
    const gains = free.map((i) => site.gain(i)!);
    const best = free[gains.indexOf(Math.max(...gains))];
    site.read(best);
    return site.spots[best];
  });
}

function fieldFrom(
  home: GeneratedHome,
  readings: readonly SurveyReading[],
  method: Asked['method'],
  marked: boolean,
  effort: Effort,
): Field {
  const survey = surveyOf({ ...home, readings: [...readings] }, method, marked);
  if (method !== 'source-sampling') {
    const result = fitSurvey(survey);
    if (!result.ok) throw new Error(`home ${home.seed}: ${result.problem.kind}`);
    return fieldOf(result.fitted, 'l1', READ_AT);
  }
  const question = samplingQuestion(survey, { seed: SEED, effort });
  const field = sampledField(question, sampleSources(question)!, READ_AT);
  return {
    predict: (xs, ys) => field.both({ xs, ys }),
    draws: (points, others) => field.draws(points, others),
    cross: (a, b) => field.cross(a, b),
    support: (xs) => ({ doubt: new Float64Array(xs.length), reason: new Uint8Array(xs.length) }),
    nearest: () => 0,
  };
}

function errorOf(home: GeneratedHome, field: Field): number {
  const { xs, ys } = cells(home);
  const { mean } = field.predict(xs, ys, { variance: false });
  const squares = xs.map((x, i) => ((mean[i] - Math.log(home.truth(x, ys[i], READ_AT))) / Math.LN10) ** 2);
  return Math.sqrt(squares.reduce((sum, square) => sum + square, 0) / squares.length);
}

const METHODS = [
  { method: 'kriging', marked: false },
  { method: 'source-sampling', marked: false },
  { method: 'source-kriging', marked: true },
  { method: 'source-sampling', marked: true },
] as const;

/** One line a method, printed as it is done: median and p90 of the error. */
export function printPlacedTable(homes = 60): void {
  console.log(
    `\nTwelve further readings, spread like the first 24 or placed by the rule, four at a time: ${homes} known homes`,
  );
  for (const asked of METHODS) {
    const { first, fixed, placed, won } = measurePlaced({ ...asked, homes });
    const text = ({ median, p90 }: Spread) => `${median.toFixed(3)} ${p90.toFixed(3)}`;
    console.log(
      `${`${asked.method}${asked.marked ? ', marked' : ''}`.padEnd(26)}24: ${text(first)}   36: ${text(fixed)}   24 + 12 placed: ${text(placed)}   nearer in ${won}`,
    );
  }
}
