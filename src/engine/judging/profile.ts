import { closestOnSegment } from '../geometry/segment';
import { correct } from '../survey/meter';
import { distance, lerp, type Point } from '../geometry/point';
import { HALF_90 } from '../mapping/interval';
import { fitFalloff } from '../magnetics/falloff';
import type { AssessWalk } from '../assess';
import type { Field } from '../mapping/field';
import type { Survey, SurveyReading } from '../mapping/survey';

/** How the field runs along a walk. */
export interface Profile {
  walk: string;
  /** Exponent n of B ∝ 1/rⁿ and its standard deviation; null where readings along the walk do not tell. */
  falloff: number | null;
  falloffSd: number | null;
  /** Metres along the walk from which on the field stays at or below the target: at the lower end of the interval, the
   * estimate, and the upper end; null where the estimate does not come to stay below it. A null third: not within the walk. */
  targetAt: [number, number, number | null] | null;
  /** Metres along the walk, estimate, 5th and 95th percentile, µT. */
  rows: [number, number, number, number][];
}

const STEP = 0.25;
const MOST_ROWS = 400;

// A reading belongs to a walk when it was taken within an arm's length of its line.
const BESIDE = 0.6;

// Nearer than this to the start of a walk, or to a source, distance says little about what the meter is near to.
const NEAREST = 0.3;

/**
 * The estimate along a walk, how fast the readings along it fall with distance, and from where on a target is met.
 *
 * The fall-off is the slope of ln B on ln r by least squares over the readings beside the walk (independent of one another,
 * which estimates are not), from where they are highest outwards; r is the distance to `walk.from` in three dimensions, or
 * along the walk from its start. Null with fewer than three readings, or where the slope is under twice its own error.
 */
export function profileOf(
  field: Field,
  walk: AssessWalk,
  { survey, target }: { survey: Survey; target: number },
): Profile {
  const length = lengthOf(walk.path);
  const count = Math.min(MOST_ROWS, Math.max(1, Math.ceil(length / STEP)));
  const along = Array.from({ length: count + 1 }, (_, i) => (i * length) / count);
  const places = along.map((d) => placeAt(walk.path, d));
  const { mean, variance } = field.predict(
    Float64Array.from(places, ([x]) => x),
    Float64Array.from(places, ([, y]) => y),
    { variance: true },
  );
  const rows = along.map((d, i): Profile['rows'][number] => {
    const spread = HALF_90 * Math.sqrt(variance![i]);
    return [d, Math.exp(mean[i]), Math.exp(mean[i] - spread), Math.exp(mean[i] + spread)];
  });

  const metFrom = (column: 1 | 2 | 3) =>
    staysBelow(
      rows.map((row) => [row[0], row[column]]),
      target,
    );
  const best = metFrom(1);
  return {
    walk: walk.id,
    ...falloffOf(walk, survey.readings),
    targetAt: best === null ? null : [metFrom(2)!, best, metFrom(3)],
    rows,
  };
}

/** Where along the rows the value comes to stay at or below the target, between rows linear in ln; null: never. */
function staysBelow(rows: readonly [number, number][], target: number): number | null {
  let last = rows.length - 1;
  if (rows[last][1] > target) return null;
  while (last > 0 && rows[last - 1][1] <= target) last--;
  if (last === 0) return rows[0][0];
  const [d0, above] = rows[last - 1];
  const [d1, below] = rows[last];
  return d0 + ((d1 - d0) * Math.log(above / target)) / Math.log(above / below);
}

function falloffOf(
  walk: AssessWalk,
  readings: readonly SurveyReading[],
): { falloff: number | null; falloffSd: number | null } {
  const points = readings
    .filter(({ level, limit, value }) => level === walk.level && limit === null && value > 0)
    .map((reading) => ({ reading, ...nearestOn(walk.path, reading.at) }))
    .filter((point) => point.distance <= BESIDE)
    .map(({ reading, along }) => ({
      r: distanceFrom(walk, reading, along),
      value: correct(reading.meter, reading.value),
    }))
    .filter(({ r, value }) => r >= NEAREST && value > 0)
    .sort((a, b) => a.r - b.r);
  const highest = points.reduce((best, point, i) => (point.value > points[best].value ? i : best), 0);
  const outwards = points.slice(highest);
  const fit = fitFalloff(
    outwards.map(({ r }) => r),
    outwards.map(({ value }) => value),
  );
  if (!fit || !(fit.exponent > 2 * fit.standardError)) return { falloff: null, falloffSd: null };
  return { falloff: fit.exponent, falloffSd: fit.standardError };
}

function distanceFrom({ from }: AssessWalk, reading: SurveyReading, along: number): number {
  if (!from) return along;
  return Math.hypot(nearestOn(from.path, reading.at).distance, from.height - reading.height);
}

const lengthOf = (path: readonly Point[]): number =>
  path.reduce((sum, p, i) => (i === 0 ? 0 : sum + distance(path[i - 1], p)), 0);

function placeAt(path: readonly Point[], along: number): Point {
  let left = along;
  for (let i = 1; i < path.length; i++) {
    const length = distance(path[i - 1], path[i]);
    if (left <= length && length > 0) return lerp(path[i - 1], path[i], left / length);
    left -= length;
  }
  return path[path.length - 1];
}

/** The nearest place on a path, as metres along it and from it; a path of one point is that point. */
function nearestOn(path: readonly Point[], p: Point): { along: number; distance: number } {
  let best = { along: 0, distance: distance(path[0], p) };
  let before = 0;
  for (let i = 1; i < path.length; i++) {
    const length = distance(path[i - 1], path[i]);
    const closest = closestOnSegment(p, path[i - 1], path[i]);
    if (closest.distance < best.distance)
      best = { along: before + closest.t * length, distance: closest.distance };
    before += length;
  }
  return best;
}
