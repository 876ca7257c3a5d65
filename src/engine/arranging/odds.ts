import { logNormalSums, type LogNormalSums } from '../dose/logNormalSum';
import type { FieldAt } from '../dose/fieldAt';
import type { FittedSurvey } from '../mapping/fitSurvey';
import type { Point } from '../geometry/point';
import type { Zone } from '../dose/zones';

/** Somebody in a zone. */
export interface Stay {
  level: string;
  height: number;
  zone: Zone;
}

/** What to do with a proposed place: move there; read at both places first; or stay, since no gain is clear. */
export type Decision = 'move' | 'measure-both' | 'stay';

/** ln B at the cells of some stays, one after the other: estimate, and covariance of its errors (row-major). */
export interface Joint {
  mean: Float64Array;
  covariance: Float64Array;
}

/** Everything an estimate says about several zones at once. Levels are read apart, and err independently. */
export function jointOf(fieldAt: FieldAt, stays: readonly Stay[]): Joint {
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
          covariance[i * m + j] = block[a * other.members.length + b];
        }),
      );
    }
  }
  return { mean, covariance };
}

/** Doses of several days, each the stays that `counts` gives a weight, as log-normal sums (see `logNormalSums`). */
export const dosesOf = (
  { mean, covariance }: Joint,
  stays: readonly Stay[],
  days: readonly ((index: number) => number)[],
): LogNormalSums =>
  logNormalSums(
    mean,
    covariance,
    days.map((weight) =>
      stays.flatMap(({ zone: { cells } }, i) => cells.map(() => weight(i) / cells.length)),
    ),
  );

/**
 * Probability that the field is such that day `b` has a lower dose than day `a`. With L the ln of their medians and s their
 * covariance: P = Φ((L_a − L_b) / √(s_aa + s_bb − 2·s_ab)).
 */
export function oddsBetween({ ln, covariance }: LogNormalSums, a: number, b: number): number {
  const gain = ln[a] - ln[b];
  const variance = covariance[a][a] + covariance[b][b] - 2 * covariance[a][b];
  // Below this only rounding is left: the days differ surely, or not at all.
  if (variance > 1e-12) return normalBelow(gain / Math.sqrt(variance));
  return Math.abs(gain) < 1e-9 ? 0.5 : gain > 0 ? 1 : 0;
}

/** The same estimate with intervals that leave-one-out found too narrow made up for; those too wide stay as they are. */
export function widened(
  { mean, covariance }: Joint,
  { meanSquareZ }: Pick<FittedSurvey, 'meanSquareZ'>,
): Joint {
  const inflation = Math.max(1, meanSquareZ);
  return { mean, covariance: covariance.map((value) => value * inflation) };
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
