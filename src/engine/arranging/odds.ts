import { logNormalSums } from '../dose/logNormalSum';
import type { FieldAt } from '../dose/fieldAt';
import type { FittedSurvey } from '../mapping/fitSurvey';
import type { Point } from '../geometry/point';
import type { Zone } from '../dose/zones';

/** Somebody in a zone, and how much the field there counts (hours, shared among people). */
export interface Stay {
  level: string;
  height: number;
  zone: Zone;
  weight: number;
}

/** What to do with a proposed place: move there; read at both places first; or stay, since no gain is clear. */
export type Decision = 'move' | 'measure-both' | 'stay';

/** A dose, µT·h: median and 90 % interval, as ln and variance of ln. */
export interface Comparison {
  before: { ln: number; variance: number };
  after: { ln: number; variance: number };
  /** Probability that the field is such that `after` is lower. */
  odds: number;
}

/**
 * Two ways to spend a day, compared under the estimate's joint covariance (times `inflation`, which makes up for intervals
 * that leave-one-out found too narrow). With L the logs of the two doses' medians and s their covariance (see
 * `logNormalSums`), P = Φ((L_before − L_after) / √(s_aa + s_bb − 2s_ab)). Levels are estimated from different readings and
 * err independently.
 */
export function compareStays(
  fieldAt: FieldAt,
  before: readonly Stay[],
  after: readonly Stay[],
  inflation: number,
): Comparison {
  const stays = [...before, ...after];
  const cells = stays.flatMap(({ zone }) => zone.cells);
  const m = cells.length;
  const mean = new Float64Array(m);
  const covariance = new Float64Array(m * m);
  const planes = planesOf(stays);
  for (const plane of planes) {
    const field = fieldAt(plane.level, plane.height);
    const own = pointsOf(plane.members, cells);
    field.predict(own.xs, own.ys, { variance: false }).mean.forEach((ln, i) => (mean[plane.members[i]] = ln));
    for (const other of planes) {
      if (other.level !== plane.level) continue;
      const block = field.cross(own, other === plane ? own : pointsOf(other.members, cells));
      plane.members.forEach((i, a) =>
        other.members.forEach((j, b) => {
          covariance[i * m + j] = block[a * other.members.length + b] * inflation;
        }),
      );
    }
  }
  const sums = logNormalSums(mean, covariance, [
    weightsOf(stays, (i) => i < before.length),
    weightsOf(stays, (i) => i >= before.length),
  ]);
  const [[bb, ba], [, aa]] = sums.covariance;
  return {
    before: { ln: sums.ln[0], variance: bb },
    after: { ln: sums.ln[1], variance: aa },
    odds: oddsOf(sums.ln[0] - sums.ln[1], aa + bb - 2 * ba),
  };
}

function oddsOf(gain: number, variance: number): number {
  if (variance > 1e-12) return normalBelow(gain / Math.sqrt(variance));
  return gain > 0 ? 1 : gain < 0 ? 0 : 0.5;
}

// The project's choices, tried on known fields: below them, moves made things worse too often, or hardly better.
const SURE = 0.9;
const LIKELY = 0.7;
const WORTHWHILE = 0.1;

/** The advice: a gain under a tenth is not worth carrying furniture for, nor measuring. */
export function decide(before: number, after: number, odds: number | null): Decision {
  if (odds === null || after > (1 - WORTHWHILE) * before) return 'stay';
  return odds >= SURE ? 'move' : odds >= LIKELY ? 'measure-both' : 'stay';
}

/** What makes up for intervals that leave-one-out found too narrow; those found too wide stay as they are. */
export const inflationOf = ({ meanSquareZ }: FittedSurvey): number => Math.max(1, meanSquareZ);

interface PlaneOfStays {
  level: string;
  height: number;
  members: number[];
}

function planesOf(stays: readonly Stay[]): PlaneOfStays[] {
  const planes: PlaneOfStays[] = [];
  let next = 0;
  for (const { level, height, zone } of stays) {
    let plane = planes.find((known) => known.level === level && known.height === height);
    if (!plane) planes.push((plane = { level, height, members: [] }));
    for (let i = 0; i < zone.cells.length; i++) plane.members.push(next++);
  }
  return planes;
}

const pointsOf = (members: readonly number[], cells: readonly Point[]) => ({
  xs: members.map((i) => cells[i][0]),
  ys: members.map((i) => cells[i][1]),
});

const weightsOf = (stays: readonly Stay[], counts: (i: number) => boolean): number[] =>
  stays.flatMap(({ zone, weight }, i) => zone.cells.map(() => (counts(i) ? weight / zone.cells.length : 0)));

/** Φ(z), within 1.2e-7 (Chebyshev fit of erfc: Press et al. 1992, section 6.2). */
export function normalBelow(z: number): number {
  const x = Math.abs(z) / Math.SQRT2;
  const t = 1 / (1 + 0.5 * x);
  const series = ERFC.reduceRight((sum, coefficient) => sum * t + coefficient, 0);
  const tail = (t * Math.exp(-x * x + series)) / 2;
  return z >= 0 ? 1 - tail : tail;
}

const ERFC = [
  -1.26551223, 1.00002368, 0.37409196, 0.09678418, -0.18628806, 0.27886807, -1.13520398, 1.48851587,
  -0.82215223, 0.17087277,
];
