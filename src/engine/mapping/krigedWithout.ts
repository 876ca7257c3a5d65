import { choleskyWithJitter, invert, solve } from '../algebra/cholesky';
import { byPlane, samePoint } from './leaveOneOut';
import { krige } from './kriging';
import type { Kriging } from './kriging';
import type { Place } from './observations';
import type { Prediction, Predictions } from './leaveOneOut';
import type { Variogram } from './variogram';

/**
 * Each place predicted by ordinary kriging from the others of its level, in closed form: with Q = K⁻¹ − K⁻¹11ᵀK⁻¹/1ᵀK⁻¹1 and
 * J the places of one point of the plan, the residuals are Q_JJ⁻¹(Qz)_J and their covariance is Q_JJ⁻¹ (Dubrule 1983 for one
 * place; Ginsbourger & Schärer 2021 for several). One inverse instead of one solution a place.
 */
export function krigedWithout(places: readonly Place[], variogram: Variogram): Predictions {
  return byPlane(places, (plane, members) => {
    const kriging = krige(plane, variogram);
    const Q = bordered(kriging);
    return members.map((i) => without(kriging, Q, plane.values[i], samePoint(plane.places, i), i));
  });
}

function without(
  { n, dual }: Kriging,
  Q: Float64Array,
  value: number,
  group: number[],
  i: number,
): Prediction | null {
  if (group.length === n) return null;
  // Qz is what kriging calls dual.
  if (group.length === 1) return { predicted: value - dual[i] / Q[i * n + i], variance: 1 / Q[i * n + i] };
  const size = group.length;
  const block = Float64Array.from({ length: size * size }, (_, at) => {
    const [row, column] = [group[Math.floor(at / size)], group[at % size]];
    return Q[row * n + column];
  });
  const cholesky = choleskyWithJitter(block, size, block[0]);
  if (!cholesky) return null;
  const own = group.indexOf(i);
  const residual = solve(
    cholesky,
    group.map((j) => dual[j]),
  )[own];
  const variance = solve(
    cholesky,
    group.map((j) => (j === i ? 1 : 0)),
  )[own];
  return { predicted: value - residual, variance };
}

function bordered({ cholesky, precision, n }: Kriging): Float64Array {
  const Q = invert(cholesky);
  const u = solve(cholesky, new Float64Array(n).fill(1));
  for (let i = 0; i < n; i++) for (let j = 0; j < n; j++) Q[i * n + j] -= (u[i] * u[j]) / precision;
  return Q;
}
