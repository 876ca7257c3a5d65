import { changesOf } from './strengthDoubt';
import { floorOf, spotsOf } from './sourceTerms';
import { krige, krigedMean, krigingPredictor, withValues } from '../kriging';
import { planeOf } from '../plane';
import { remaindersOf, trendAt } from './sourceModel';
import { trendCovariance } from '../trend';
import { unreadLevel } from '../unreadLevel';
import type { FittedSources } from './fitRemainder';
import type { Place } from '../observations';
import type { Points } from '../covarianceMatrix';
import type { Predictor } from '../field';

/** Places of one level as the readings see them: what is left of ln B there, and what they tell of anything else. */
interface Heard {
  remainder: Predictor;
  /** Kriging of other values, one a place of the survey. */
  told(values: Float64Array, points: Points): Float64Array;
}

/**
 * Source kriging on one level, at a height above its floor: what the sources explain and the kriged remainder. The doubt of
 * the strengths counts as in universal kriging, by what the readings of the level leave of it at a place.
 */
export function sourceField(
  { model, variogram, doubt, asRead = { model, hidden: doubt.hidden } }: FittedSources,
  places: readonly Place[],
  level: string,
  height: number,
): Predictor {
  const remainders = remaindersOf(model, places);
  const { remainder, told } = heard(remainders, variogram, level, height);
  const z = floorOf(model.elevations, level) + height;
  const spots = ({ xs, ys }: Points) => ({ xs, ys, zs: Array.from(xs, () => z) });

  const withTrend = (points: Points, mean: Float64Array): Float64Array => {
    const trend = trendAt(model, spots(points));
    return mean.map((value, p) => value + trend[p]);
  };

  /** What the readings leave of each part's change at each point, part by part. */
  const open = (points: Points): Float64Array[] => {
    const atPlaces = changesOf(asRead.model, asRead.hidden, spotsOf(places, model.elevations));
    return changesOf(model, doubt.hidden, spots(points)).map((change, k) => {
      const known = told(atPlaces[k], points);
      return change.map((value, p) => value - known[p]);
    });
  };

  return {
    mean: (points) => withTrend(points, remainder.mean(points)),
    both(points) {
      const { mean, variance } = remainder.both(points);
      const rest = open(points);
      return {
        mean: withTrend(points, mean),
        variance: variance.map((value, p) => value + trendCovariance(doubt.covariance, rest, p, rest, p)),
      };
    },
    cross(a, b) {
      const rows = open(a);
      const columns = a === b ? rows : open(b);
      const m = b.xs.length;
      return remainder
        .cross(a, b)
        .map(
          (value, at) => value + trendCovariance(doubt.covariance, rows, Math.floor(at / m), columns, at % m),
        );
    },
  };
}

function heard(
  remainders: readonly Place[],
  variogram: FittedSources['variogram'],
  level: string,
  height: number,
): Heard {
  const plane = planeOf(remainders, level, height);
  if (plane.places.length === 0)
    return {
      remainder: unreadLevel(remainders, variogram),
      told(values, { xs }) {
        const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
        return new Float64Array(xs.length).fill(mean);
      },
    };
  const kriging = krige(plane, variogram);
  const own = [...remainders.keys()].filter((i) => remainders[i].level === level);
  return {
    remainder: krigingPredictor(kriging),
    told: (values, points) =>
      krigedMean(
        withValues(
          kriging,
          own.map((i) => values[i]),
        ),
        points,
      ),
  };
}
