import { inverseDistanceField } from './inverseDistanceField';
import { krige, kriged, krigedCovariance, krigedMean } from './kriging';
import { planeOf } from './plane';
import { contradicted, doubtBeside } from './contradicted';
import { REACH, supportOf } from './support';
import type { FittedSurvey } from './fitSurvey';
import type { Plane } from './plane';
import type { Point } from '../geometry/point';
import type { Points } from './covarianceMatrix';
import type { Support } from './support';

/**
 * The estimate of the field in one plane: ln B (µT), without the meter's noise, of the method that was chosen. exp(mean) is
 * the median; a 90 % interval is exp(mean ± 1.645 √variance).
 */
export interface Field {
  predict(
    xs: ArrayLike<number>,
    ys: ArrayLike<number>,
    want: { variance: boolean },
  ): { mean: Float64Array; variance: Float64Array | null };
  /** Row-major m × m. */
  covariance(xs: ArrayLike<number>, ys: ArrayLike<number>): { mean: Float64Array; covariance: Float64Array };
  /** Covariance of the errors at a with those at b, row-major a × b. */
  cross(a: Points, b: Points): Float64Array;
  /** `reach` in metres, for all or a point; `variance` where it has been asked for already. */
  support(
    xs: ArrayLike<number>,
    ys: ArrayLike<number>,
    reach?: number | ArrayLike<number>,
    variance?: Float64Array | null,
  ): Support;
  /** Metres to the nearest reading of the level; null without any. */
  nearest(p: Point): number | null;
}

/** What a method gives: linear in the readings' ln B, so that its errors have a covariance. */
export interface Predictor {
  mean(points: Points): Float64Array;
  both(points: Points): { mean: Float64Array; variance: Float64Array };
  cross(a: Points, b: Points): Float64Array;
}

/** The field of a fitted survey on a level, at a height above its floor. */
export function fieldOf(fitted: FittedSurvey, level: string, height: number): Field {
  const plane = planeOf(fitted.places, level, height);
  const predictor = predictorOf(fitted, plane);
  let passed: readonly Point[] | null = null;
  return {
    predict: (xs, ys, { variance }) =>
      variance ? predictor.both({ xs, ys }) : { mean: predictor.mean({ xs, ys }), variance: null },
    covariance(xs, ys) {
      const points = { xs, ys };
      return { mean: predictor.mean(points), covariance: predictor.cross(points, points) };
    },
    cross: (a, b) => predictor.cross(a, b),
    support(xs, ys, reach = REACH, variance = null) {
      const distance = Float64Array.from(xs, (x, i) => distanceTo(plane, x, ys[i]));
      const known = variance ?? predictor.both({ xs, ys }).variance;
      const support = supportOf(known, distance, reach, plane.places.length);
      passed ??= contradicted(plane, predictor.mean(plane));
      return doubtBeside(support, passed, xs, ys);
    },
    nearest: ([x, y]) => (plane.places.length > 0 ? distanceTo(plane, x, y) : null),
  };
}

function predictorOf(fitted: FittedSurvey, plane: Plane): Predictor {
  if (plane.places.length === 0) return unreadLevel(fitted);
  if (fitted.method === 'inverse-distance')
    return inverseDistanceField(plane, fitted.variogram, fitted.power);
  const kriging = krige(plane, fitted.variogram);
  return {
    mean: (points) => krigedMean(kriging, points),
    both: (points) => kriged(kriging, points),
    cross: (a, b) => krigedCovariance(kriging, a, b),
  };
}

/** Without a reading a level is taken to be like the rest of the home, as unsurely as any place is. */
function unreadLevel({ places, variogram }: FittedSurvey): Predictor {
  const mean = places.reduce((sum, { ln }) => sum + ln, 0) / places.length;
  const spread = places.reduce((sum, { ln }) => sum + (ln - mean) ** 2, 0) / (places.length - 1);
  const variance = spread + variogram.nugget + variogram.sill;
  return {
    mean: ({ xs }) => new Float64Array(xs.length).fill(mean),
    both: ({ xs }) => ({
      mean: new Float64Array(xs.length).fill(mean),
      variance: new Float64Array(xs.length).fill(variance),
    }),
    cross: (a, b) => new Float64Array(a.xs.length * b.xs.length).fill(variance),
  };
}

function distanceTo({ places }: Plane, x: number, y: number): number {
  let least = Infinity;
  for (const place of places) {
    const square = (place.x - x) ** 2 + (place.y - y) ** 2;
    if (square < least) least = square;
  }
  return Math.sqrt(least);
}
