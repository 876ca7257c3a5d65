import { byPlane, samePoint } from './leaveOneOut';
import { covarianceMatrix } from './covarianceMatrix';
import { inverseDistanceWeights } from './inverseDistance';
import { quadraticForms } from './quadraticForms';
import type { Place } from './observations';
import type { Prediction, Predictions } from './leaveOneOut';
import type { Variogram } from './variogram';

/** Places that share one pass over the covariance of all. */
const BLOCK = 32;

/**
 * Each place predicted by inverse distance from the others of its level. The variance is what any weights w have under the
 * variogram, wᵀKw − 2wᵀk + K₀₀.
 */
export function inverseDistanceWithout(
  places: readonly Place[],
  variogram: Variogram,
  power: number,
): Predictions {
  return byPlane(places, (plane, members) => {
    const n = plane.places.length;
    const K = covarianceMatrix(plane, variogram);
    const weigh = weigher(plane.places);
    const W = new Float64Array(BLOCK * n);
    const predictions: (Prediction | null)[] = [];
    for (let first = 0; first < members.length; first += BLOCK) {
      const block = members.slice(first, first + BLOCK);
      const known = block.map((i, p) => weigh(i, power, W, p * n));
      const forms = quadraticForms(K, n, W, block.length);
      block.forEach((i, p) => {
        let predicted = 0;
        let variance = K[i * n + i] + forms[p];
        for (let j = 0; j < n; j++) {
          predicted += W[p * n + j] * plane.values[j];
          variance -= 2 * W[p * n + j] * K[i * n + j];
        }
        predictions.push(known[p] ? { predicted, variance } : null);
      });
    }
    return predictions;
  });
}

/** The same root mean square of reading less prediction as a function of the power, quick enough to be searched. */
export function inverseDistanceError(places: readonly Place[]): (power: number) => number {
  const levels = [...new Set(places.map(({ level }) => level))].map((level) => {
    const own = places.filter((place) => place.level === level);
    return { own, weigh: weigher(own), weights: new Float64Array(own.length) };
  });
  return (power) => {
    let [sum, count] = [0, 0];
    for (const { own, weigh, weights } of levels)
      for (let i = 0; i < own.length; i++) {
        if (own[i].limited || !weigh(i, power, weights, 0)) continue;
        let predicted = 0;
        for (let j = 0; j < own.length; j++) predicted += weights[j] * own[j].ln;
        sum += (own[i].ln - predicted) ** 2;
        count++;
      }
    return count > 0 ? Math.sqrt(sum / count) : 0;
  };
}

/** Weights at place i of all but those at its point of the plan, into `weights`; all 0 and false where nothing is left. */
function weigher(places: readonly Place[]) {
  const x = Float64Array.from(places, (place) => place.x);
  const y = Float64Array.from(places, (place) => place.y);
  const heights = Float64Array.from(places, ({ height }) => height);
  const left = places.map((_, i) => samePoint(places, i));
  return (i: number, power: number, weights: Float64Array, offset: number): boolean => {
    if (left[i].length === places.length) {
      weights.fill(0, offset, offset + places.length);
      return false;
    }
    const drop = heights.map((height) => (height - heights[i]) ** 2);
    // What is left out is infinitely far below.
    for (const j of left[i]) drop[j] = Infinity;
    inverseDistanceWeights({ x, y, drop }, x[i], y[i], power, weights, offset);
    return true;
  };
}
