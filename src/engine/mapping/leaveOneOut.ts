import { choleskyWithJitter, invert, solve } from '../algebra/cholesky';
import { inverseDistanceWeights } from './inverseDistance';
import { krige } from './kriging';
import { planeOf } from './plane';
import { covarianceMatrix } from './covarianceMatrix';
import type { Cholesky } from '../algebra/cholesky';
import type { Kriging } from './kriging';
import type { Place } from './observations';
import type { Plane } from './plane';
import type { Variogram } from './variogram';

/** What a reading would have been predicted as without its place: ln B, and the variance of reading less prediction. */
export interface Prediction {
  predicted: number;
  variance: number;
}

/** Places of one point of the plan, whatever their height: they are left out together. */
const SAME = 1e-3;

/**
 * Each place predicted by ordinary kriging from the others of its level, in closed form: with Q the inverse of the kriging
 * matrix without its border, residual Q_JJ⁻¹(Qz)_J and variance Q_JJ⁻¹ for the places J of one point of the plan
 * (Dubrule 1983, for one place; Ginsbourger & Schärer 2021, for several). Null for a place whose level has no other.
 */
export function krigedWithout(places: readonly Place[], variogram: Variogram): (Prediction | null)[] {
  return byPlane(places, (plane, members) => {
    const kriging = krige(plane, variogram);
    const Q = bordered(kriging);
    return members.map((i) => {
      const group = samePoint(plane, i);
      if (group.length === kriging.n) return null;
      const block = blockOf(Q, kriging.n, group);
      const residual = solve(
        block,
        group.map((j) => kriging.dual[j]),
      );
      const own = group.indexOf(i);
      const variance = solve(
        block,
        group.map((_, k) => (k === own ? 1 : 0)),
      )[own];
      return { predicted: plane.values[i] - residual[own], variance };
    });
  });
}

/**
 * Each place predicted by inverse distance from the others of its level. The variance is that of any linear predictor w
 * under the variogram, wᵀKw − 2wᵀk + K₀₀.
 */
export function inverseDistanceWithout(
  places: readonly Place[],
  variogram: Variogram,
  power: number,
): (Prediction | null)[] {
  return byPlane(places, (plane, members) => {
    const n = plane.places.length;
    const K = covarianceMatrix(plane, variogram);
    return members.map((i) => {
      const group = new Set(samePoint(plane, i));
      const others = plane.places.flatMap((_, j) => (group.has(j) ? [] : [j]));
      if (others.length === 0) return null;
      const weights = new Float64Array(others.length);
      inverseDistanceWeights(
        others.map((j) => plane.places[j]),
        plane.places[i],
        power,
        weights,
      );
      let predicted = 0;
      let variance = K[i * n + i];
      others.forEach((j, a) => {
        predicted += weights[a] * plane.values[j];
        variance -= 2 * weights[a] * K[i * n + j];
        others.forEach((k, b) => (variance += weights[a] * weights[b] * K[j * n + k]));
      });
      return { predicted, variance };
    });
  });
}

/** Root of the mean square of prediction less reading, over places that have both; null where none has. */
export function rootMeanSquare(
  places: readonly Place[],
  predictions: readonly (Prediction | null)[],
): number | null {
  let [sum, count] = [0, 0];
  predictions.forEach((prediction, i) => {
    if (!prediction || places[i].limited) return;
    sum += (prediction.predicted - places[i].ln) ** 2;
    count++;
  });
  return count > 0 ? Math.sqrt(sum / count) : null;
}

/** Answers for the places of each level and height, in the order of `places`. */
function byPlane(
  places: readonly Place[],
  predict: (plane: Plane, members: number[]) => (Prediction | null)[],
): (Prediction | null)[] {
  const answers = new Map<Place, Prediction | null>();
  for (const place of places) {
    if (answers.has(place)) continue;
    const plane = planeOf(places, place.level, place.height);
    const members = plane.places.flatMap(({ height }, i) => (height === place.height ? [i] : []));
    predict(plane, members).forEach((answer, k) => answers.set(plane.places[members[k]], answer));
  }
  return places.map((place) => answers.get(place) ?? null);
}

function samePoint({ places }: Plane, i: number): number[] {
  const { x, y } = places[i];
  return places.flatMap((other, j) => (Math.hypot(other.x - x, other.y - y) < SAME ? [j] : []));
}

/** K⁻¹ − K⁻¹11ᵀK⁻¹ / 1ᵀK⁻¹1, row-major. */
function bordered({ cholesky, precision, n }: Kriging): Float64Array {
  const Q = invert(cholesky);
  const u = solve(cholesky, new Float64Array(n).fill(1));
  for (let i = 0; i < n; i++) for (let j = 0; j < n; j++) Q[i * n + j] -= (u[i] * u[j]) / precision;
  return Q;
}

function blockOf(Q: Float64Array, n: number, group: readonly number[]): Cholesky {
  const g = group.length;
  const block = new Float64Array(g * g);
  group.forEach((i, a) => group.forEach((j, b) => (block[a * g + b] = Q[i * n + j])));
  const cholesky = choleskyWithJitter(block, g, block[0]);
  if (!cholesky) throw new Error('Places of one point could not be told apart.');
  return cholesky;
}
