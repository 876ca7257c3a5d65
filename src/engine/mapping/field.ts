import { inverseDistanceField } from './inverseDistanceField';
import { krige, krigingPredictor } from './kriging';
import { planeOf } from './plane';
import { contradicted, doubtBeside } from './contradicted';
import { sampledField } from './sourceSampling/sampledField';
import { sourceField } from './sourceKriging/sourceField';
import { floorOf } from './sourceKriging/sourceTerms';
import { REACH, SAMPLED_REACH, supportOf } from './support';
import { unreadLevel } from './unreadLevel';
import type { FittedSurvey } from './fitSurvey';
import type { Place } from './observations';
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
  /**
   * What is not linear in ln B, as the mean field of a zone, is worked out in each draw and then put together. Draw for draw
   * the fields of one survey are the same state of the world, at every height and on every level.
   */
  draws(points: Points, others?: Points): Draw[];
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

/** ln B at some points as one normal law has it, and that law's share among all: one law for a method without samples. */
export interface Draw {
  weight: number;
  mean: Float64Array;
  /** Of the errors at the points with those at the others, or with their own where none are given: row-major; draws may share one. */
  covariance: Float64Array;
}

/** What a method gives: linear in the readings' ln B, so that its errors have a covariance. */
export interface Predictor {
  mean(points: Points): Float64Array;
  both(points: Points): { mean: Float64Array; variance: Float64Array };
  cross(a: Points, b: Points): Float64Array;
  /** Left out where one normal law says it all. */
  draws?(points: Points, others: Points): Draw[];
}

/** The field of a fitted survey on a level, at a height above its floor. */
export function fieldOf(fitted: FittedSurvey, level: string, height: number): Field {
  const plane = planeOf(fitted.places, level, height);
  const predictor = predictorOf(fitted, level, plane);
  let passed: readonly Point[] | null = null;
  return {
    predict: (xs, ys, { variance }) =>
      variance ? predictor.both({ xs, ys }) : { mean: predictor.mean({ xs, ys }), variance: null },
    draws: (points, others = points) =>
      predictor.draws?.(points, others) ?? [
        { weight: 1, mean: predictor.mean(points), covariance: predictor.cross(points, others) },
      ],
    cross: (a, b) => predictor.cross(a, b),
    support(xs, ys, reach = REACH, variance = null) {
      const known = variance ?? predictor.both({ xs, ys }).variance;
      // Sources that explain one level carry over to the next; past the reach of all readings there may be others.
      const heard = fitted.sources?.explain ? fitted.places : plane.places;
      const distance = Float64Array.from(xs, (x, i) => distanceTo(heard, x, ys[i]));
      const support = supportOf(known, distance, fitted.sampled ? sampledReach(reach) : reach, heard.length);
      passed ??= contradicted(plane, predictor.mean(plane));
      return doubtBeside(support, passed, xs, ys);
    },
    nearest: ([x, y]) => (plane.places.length > 0 ? distanceTo(plane.places, x, y) : null),
  };
}

function predictorOf(fitted: FittedSurvey, level: string, plane: Plane): Predictor {
  if (fitted.sampled) {
    const { question, samples, elevations, changed } = fitted.sampled;
    return sampledField(question, samples, floorOf(elevations, level) + plane.height, changed);
  }
  if (fitted.sources) return sourceField(fitted.sources, fitted.places, level, plane.height);
  if (plane.places.length === 0) return unreadLevel(fitted.places, fitted.variogram);
  if (fitted.method === 'inverse-distance')
    return inverseDistanceField(plane, fitted.variogram, fitted.power);
  return krigingPredictor(krige(plane, fitted.variogram));
}

const sampledReach = (reach: number | ArrayLike<number>) =>
  typeof reach === 'number'
    ? Math.max(SAMPLED_REACH, reach)
    : Array.from(reach, (metres) => Math.max(SAMPLED_REACH, metres));

function distanceTo(places: readonly Place[], x: number, y: number): number {
  let least = Infinity;
  for (const place of places) {
    const square = (place.x - x) ** 2 + (place.y - y) ** 2;
    if (square < least) least = square;
  }
  return Math.sqrt(least);
}
