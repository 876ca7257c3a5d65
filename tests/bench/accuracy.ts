import { BUILDS, type BuildName } from '../support/generators/builds';
import { contains } from '../../src/engine/geometry/polygon';
import { fieldOf } from '../../src/engine/mapping/field';
import { fitSurvey } from '../../src/engine/mapping/fitSurvey';
import { HALF_90 } from '../../src/engine/mapping/interval';
import { random } from '../../src/engine/algebra/random';
import { READ_AT, surveyOf, type GeneratedHome } from '../support/generators/generatedHome';
import { sampledWithout } from '../../src/engine/mapping/sourceSampling/sampledWithout';
import { sampleSources } from '../../src/engine/mapping/sourceSampling/sampleSources';
import { samplingQuestion, type Effort } from '../../src/engine/mapping/sourceSampling/question';
import { zoneDose } from '../../src/engine/dose/dose';
import type { Method } from '../../src/engine/mapping/choose';
import type { MethodChoice } from '../../src/engine/mapping/survey';
import type { Point } from '../../src/engine/geometry/point';
import type { Sampled } from '../../src/engine/mapping/sourceSampling/sampleSurvey';

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
  /** Share of the cells that are drawn, and the share of truth inside their intervals. */
  shown: number;
  shownCoverage: number;
  /** In how many homes each method drew the map. */
  chosen: Partial<Record<Method, number>>;
}

export interface Asked {
  build?: BuildName;
  /** As many, of seeds 1, 2, …. */
  homes?: number;
  readings?: number;
  /** Whether the sources that can be seen are marked. */
  marked?: boolean;
  /** Of source sampling; without it sources are not sampled, and the automatic choice is among the instant methods. */
  effort?: Effort;
}

const CELL = 0.4;

/** The sampler's seed, the same in every home. */
const SEED = 7;

/** Maps of known homes by one method, held against the true fields. */
export const measureAccuracy = ({
  method = 'auto',
  ...asked
}: Asked & { method?: MethodChoice } = {}): Accuracy => measureMethods(asked, [method])[0];

/** The same by several methods, the sources of each home sampled once. */
export function measureMethods(
  { build = 'along walls', homes = 40, readings = 36, marked = false, effort }: Asked,
  methods: readonly MethodChoice[],
): Accuracy[] {
  const wanted = methods.some((method) => method === 'auto' || method === 'source-sampling');
  const each = Array.from({ length: homes }, (_, i) => {
    const home = BUILDS[build](i + 1, readings);
    const sampling = effort && wanted ? sampledIn(home, marked, effort, methods.includes('auto')) : null;
    return methods.map((method) => measureHome(home, method, marked, sampling));
  });
  return methods.map((_, m) => summed(each.map((measured) => measured[m])));
}

/** What homes have in common. */
function summed(each: readonly Measured[]): Accuracy {
  const errors = each.map(({ error }) => error);
  const beds = each.flatMap(({ beds }) => beds);
  const bedErrors = beds.map(({ error }) => error);
  const worst = each.reduce((most, one) => (one.error > most.error ? one : most));
  const chosen: Partial<Record<Method, number>> = {};
  for (const { method } of each) chosen[method] = (chosen[method] ?? 0) + 1;
  return {
    homes: each.length,
    median: quantile(errors, 0.5),
    p90: quantile(errors, 0.9),
    worst: { error: worst.error, seed: worst.seed },
    coverage: mean(each.map(({ coverage }) => coverage)),
    width: mean(each.map(({ width }) => width)),
    shown: mean(each.map(({ shown }) => shown)),
    shownCoverage: mean(each.filter(({ shown }) => shown > 0).map(({ shownCoverage }) => shownCoverage)),
    fitMs: mean(each.map(({ fitMs }) => fitMs)),
    mapMs: mean(each.map(({ mapMs }) => mapMs)),
    bedMedian: quantile(bedErrors, 0.5),
    bedP90: quantile(bedErrors, 0.9),
    bedCoverage: mean(beds.map(({ inside }) => Number(inside))),
    chosen,
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

type Measured = ReturnType<typeof measureHome>;

/** A home's sampled sources, and the processor time that they took. */
interface Sampling {
  sampled: Sampled;
  ms: number;
}

/** One home's map by one method; `sampling` where its sources were sampled. */
function measureHome(home: GeneratedHome, method: MethodChoice, marked: boolean, sampling: Sampling | null) {
  const { xs, ys } = cells(home);
  const started = processorMs();
  const result = fitSurvey(surveyOf(home, method, marked), undefined, sampling?.sampled);
  if (!result.ok) throw new Error(`home ${home.seed}: ${result.problem.kind}`);
  const field = fieldOf(result.fitted, 'l1', READ_AT);
  const fit = processorMs();
  const { mean: ln, variance } = field.predict(xs, ys, { variance: true });
  const drawn = processorMs();
  const { doubt } = field.support(xs, ys, undefined, variance);
  let [square, inside, width, shown, shownInside] = [0, 0, 0, 0, 0];
  xs.forEach((x, i) => {
    const off = ln[i] - Math.log(home.truth(x, ys[i], READ_AT));
    const half = HALF_90 * Math.sqrt(variance![i]);
    const within = Number(Math.abs(off) <= half);
    square += (off / Math.LN10) ** 2;
    inside += within;
    width += (2 * half) / Math.LN10;
    if (doubt[i] > 1) return;
    shown++;
    shownInside += within;
  });
  const samples = sampling && (method === 'auto' || method === 'source-sampling');
  return {
    seed: home.seed,
    method: result.fitted.method,
    error: Math.sqrt(square / xs.length),
    coverage: inside / xs.length,
    width: width / xs.length,
    shown: shown / xs.length,
    shownCoverage: shownInside / shown,
    fitMs: fit - started + (samples ? sampling.ms : 0),
    mapMs: drawn - fit,
    beds: bedsIn(home).map((cells) => {
      const truth = mean(cells.map(([x, y]) => home.truth(x, y, READ_AT)));
      const { mean: median, low, high } = zoneDose(field, { ring: [], cells }, 1);
      return { error: Math.abs(median / truth - 1), inside: truth >= low && truth <= high };
    }),
  };
}

/** `compared`: each place is predicted without itself too, as the automatic choice needs it. */
function sampledIn(home: GeneratedHome, marked: boolean, effort: Effort, compared: boolean): Sampling {
  const started = processorMs();
  const survey = surveyOf(home, 'source-sampling', marked);
  const question = samplingQuestion(survey, { seed: SEED, effort });
  const samples = sampleSources(question)!;
  const without = compared ? sampledWithout(question) : question.places.map(() => null);
  return {
    sampled: { question, samples, without, elevations: survey.elevations },
    ms: processorMs() - started,
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
