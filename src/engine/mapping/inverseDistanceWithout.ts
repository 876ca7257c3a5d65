import { byPlane, samePoint } from './leaveOneOut';
import { covarianceMatrix } from './covarianceMatrix';
import type { Place } from './observations';
import type { Predictions } from './leaveOneOut';
import type { Variogram } from './variogram';

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
    const all = logDistances(plane.places);
    const weights = new Float64Array(n);
    return members.map((i) => {
      if (!weigh(all.subarray(i * n, i * n + n), power, weights)) return null;
      let predicted = 0;
      let variance = K[i * n + i];
      for (let j = 0; j < n; j++) {
        if (weights[j] === 0) continue;
        predicted += weights[j] * plane.values[j];
        // wᵀKw by its lower half: what j adds to the places before it.
        let row = K[j * n + j] * weights[j];
        for (let k = 0; k < j; k++) row += 2 * K[j * n + k] * weights[k];
        variance += weights[j] * (row - 2 * K[i * n + j]);
      }
      return { predicted, variance };
    });
  });
}

/** The same root mean square of reading less prediction as a function of the power, quick enough to be searched. */
export function inverseDistanceError(places: readonly Place[]): (power: number) => number {
  const levels = [...new Set(places.map(({ level }) => level))].map((level) => {
    const own = places.filter((place) => place.level === level);
    return { own, all: logDistances(own), weights: new Float64Array(own.length) };
  });
  return (power) => {
    let [sum, count] = [0, 0];
    for (const { own, all, weights } of levels) {
      const n = own.length;
      for (let i = 0; i < n; i++) {
        if (own[i].limited || !weigh(all.subarray(i * n, i * n + n), power, weights)) continue;
        let predicted = 0;
        for (let j = 0; j < n; j++) predicted += weights[j] * own[j].ln;
        sum += (own[i].ln - predicted) ** 2;
        count++;
      }
    }
    return count > 0 ? Math.sqrt(sum / count) : 0;
  };
}

/** ln of distances in three dimensions, row-major; Infinity for places left out together. */
function logDistances(places: readonly Place[]): Float64Array {
  const n = places.length;
  const all = new Float64Array(n * n);
  for (let i = 0; i < n; i++) {
    for (let j = 0; j < n; j++) all[i * n + j] = Math.log(distance(places[i], places[j]));
    for (const j of samePoint(places, i)) all[i * n + j] = Infinity;
  }
  return all;
}

const distance = (a: Place, b: Place): number => Math.hypot(a.x - b.x, a.y - b.y, a.height - b.height);

/** 1/dᵖ, sum 1; false where nothing is left. */
function weigh(logDistance: Float64Array, power: number, weights: Float64Array): boolean {
  let total = 0;
  for (let j = 0; j < weights.length; j++) {
    weights[j] = Math.exp(-power * logDistance[j]);
    total += weights[j];
  }
  if (total === 0) return false;
  for (let j = 0; j < weights.length; j++) weights[j] /= total;
  return true;
}
