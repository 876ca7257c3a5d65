import { choleskyWithJitter, solve } from '../algebra/cholesky';
import { byPlane, samePoint } from './leaveOneOut';
import { krige } from './kriging';
import type { Cholesky } from '../algebra/cholesky';
import type { Kriging } from './kriging';
import type { Place } from './observations';
import type { Prediction, Predictions } from './leaveOneOut';
import type { Variogram } from './variogram';

/**
 * Each place predicted by ordinary kriging from the others of its level, in closed form: with Q = K⁻¹ − K⁻¹11ᵀK⁻¹/1ᵀK⁻¹1 and
 * J the places of one point of the plan, the residuals are Q_JJ⁻¹(Qz)_J and their covariance is Q_JJ⁻¹ (Dubrule 1983 for one
 * place; Ginsbourger & Schärer 2021 for several). Qz is what kriging calls dual; of Q no more is made than the blocks asked.
 */
export function krigedWithout(places: readonly Place[], variogram: Variogram): Predictions {
  return byPlane(places, (plane, members) => {
    const kriging = krige(plane, variogram);
    return members.map((i) => without(kriging, plane.values[i], samePoint(plane.places, i), i));
  });
}

function without(kriging: Kriging, value: number, group: readonly number[], i: number): Prediction | null {
  if (group.length === kriging.n) return null;
  const block = choleskyWithJitter(blockOf(kriging, group), group.length, 0);
  if (!block) return null;
  const own = group.indexOf(i);
  const residual = solve(
    block,
    group.map((j) => kriging.dual[j]),
  )[own];
  const variance = solve(
    block,
    group.map((j) => (j === i ? 1 : 0)),
  )[own];
  return { predicted: value - residual, variance };
}

/** Q_JJ, row-major: column j of K⁻¹ is L⁻ᵀL⁻¹e_j, and 1ᵀK⁻¹e_j is (L⁻¹1)·(L⁻¹e_j). */
function blockOf({ cholesky, ones, precision }: Kriging, group: readonly number[]): Float64Array {
  const columns = group.map((j) => {
    const column = unitColumn(cholesky, j);
    return { column, total: dot(ones, column) };
  });
  return Float64Array.from(
    columns.flatMap((a) => columns.map((b) => dot(a.column, b.column) - (a.total * b.total) / precision)),
  );
}

/** L⁻¹e_j: nothing before j, which over all j leaves a third of the work. */
function unitColumn({ n, lower }: Cholesky, j: number): Float64Array {
  const column = new Float64Array(n);
  column[j] = 1 / lower[j * n + j];
  for (let i = j + 1; i < n; i++) {
    let sum = 0;
    for (let k = j; k < i; k++) sum -= lower[i * n + k] * column[k];
    column[i] = sum / lower[i * n + i];
  }
  return column;
}

function dot(a: Float64Array, b: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += a[i] * b[i];
  return sum;
}
