import { choleskyWithJitter, solve, solveLower } from '../algebra/cholesky';
import { covarianceMatrix, fieldCovariance } from './covarianceMatrix';
import { reduce } from './reduce';
import { ABREAST, TOGETHER, abreast, productsAbreast, startAbreast } from '../algebra/solveLowerMany';
import { CORRELATION } from './variogram';
import type { Cholesky } from '../algebra/cholesky';
import type { Data, Points } from './covarianceMatrix';
import type { Predictor } from './field';
import type { Scaled } from './reduce';
import type { Variogram } from './variogram';

/** Ordinary kriging of one plane's data, solved and ready to be asked. */
export interface Kriging extends Scaled {
  n: number;
  variogram: Variogram;
  centre: readonly [number, number];
  /** Of the covariance of the values. */
  cholesky: Cholesky;
  /** The unknown mean, by generalised least squares. */
  mean: number;
  /** K⁻¹(z − mean): the estimate at a place is mean + c·dual (dual form: one correlation a reading). */
  dual: Float64Array;
  /** L⁻¹(z − mean), L⁻¹1 and 1ᵀK⁻¹1. */
  residuals: Float64Array;
  ones: Float64Array;
  precision: number;
}

/**
 * Ordinary kriging in covariance form (Matheron 1963; Cressie 1993, section 3.2): K = C + (nugget + noise) on the
 * diagonal, the mean by generalised least squares. At least one value. An estimate is of the field beside a place, without
 * the meter's noise; so it goes through the data only where nugget and noise are 0, and has no spike at a reading.
 */
export function krige(data: Data, variogram: Variogram): Kriging {
  const n = data.values.length;
  const centre = [middle(data.xs), middle(data.ys)] as const;
  const { x, y } = scaled(data, centre, variogram.range);
  const total = variogram.sill + variogram.nugget;
  const cholesky = choleskyWithJitter(covarianceMatrix(data, variogram), n, total);
  if (!cholesky) throw new Error('The covariance of the readings is not positive definite.');
  const ones = solveLower(cholesky, new Float64Array(n).fill(1));
  const precision = product(ones, ones);
  const base = { n, variogram, x, y, centre, cholesky, ones, precision };
  return { ...base, ...solved(base, data.values) };
}

/** The same places with other values: nothing is factored anew. */
export const withValues = (kriging: Kriging, values: ArrayLike<number>): Kriging => ({
  ...kriging,
  ...solved(kriging, values),
});

function solved(
  { cholesky, ones, precision }: Pick<Kriging, 'cholesky' | 'ones' | 'precision'>,
  values: ArrayLike<number>,
): Pick<Kriging, 'mean' | 'dual' | 'residuals'> {
  const reduced = solveLower(cholesky, values);
  const mean = product(ones, reduced) / precision;
  const residuals = reduced.map((value, i) => value - mean * ones[i]);
  const dual = solve(
    cholesky,
    Float64Array.from(values, (value) => value - mean),
  );
  return { mean, dual, residuals };
}

/** What kriging gives as a predictor. */
export const krigingPredictor = (kriging: Kriging): Predictor => ({
  mean: (points) => krigedMean(kriging, points),
  both: (points) => kriged(kriging, points),
  cross: (a, b) => krigedCovariance(kriging, a, b),
});

/** The estimate alone at each of the points: n correlations a point, for what must be redrawn within a frame. */
export function krigedMean(kriging: Kriging, points: Points): Float64Array {
  const { n, dual, mean, x, y } = kriging;
  const { model, sill, range } = kriging.variogram;
  const correlation = CORRELATION[model];
  const targets = scaled(points, kriging.centre, range);
  const means = new Float64Array(targets.x.length);
  for (let p = 0; p < means.length; p++) {
    const px = targets.x[p];
    const py = targets.y[p];
    let sum = 0;
    for (let i = 0; i < n; i++) {
      const dx = px - x[i];
      const dy = py - y[i];
      sum += dual[i] * correlation(Math.sqrt(dx * dx + dy * dy));
    }
    means[p] = mean + sill * sum;
  }
  return means;
}

/** The estimate at each of the points and the variance of its error, which is of the field there, not of a reading. */
export function kriged(kriging: Kriging, points: Points): { mean: Float64Array; variance: Float64Array } {
  const { n, residuals, ones, precision } = kriging;
  const { nugget, sill, range } = kriging.variogram;
  const targets = scaled(points, kriging.centre, range);
  const m = targets.x.length;
  const mean = new Float64Array(m);
  const variance = new Float64Array(m);
  const V = abreast(Math.min(TOGETHER, m), n);
  for (let p = 0; p < m; p++) {
    const q = p % TOGETHER;
    if (q === 0) reduce(kriging, targets, p, V);
    let estimate = kriging.mean;
    let known = 0;
    let covered = 0;
    for (let i = 0, at = startAbreast(q, n); i < n; i++, at += ABREAST) {
      const v = V[at];
      estimate += residuals[i] * v;
      known += v * v;
      covered += ones[i] * v;
    }
    mean[p] = estimate;
    variance[p] = Math.max(0, nugget + sill - known + (1 - covered) ** 2 / precision);
  }
  return { mean, variance };
}

/** Covariance of the estimates' errors at points a and b, row-major a × b; a point with itself includes the nugget. */
export function krigedCovariance(kriging: Kriging, a: Points, b: Points): Float64Array {
  const { n, precision } = kriging;
  const rows = reduced(kriging, a);
  const columns = a === b ? rows : reduced(kriging, b);
  const covariance = fieldCovariance(kriging.variogram, a, b);
  const m = b.xs.length;
  const shared = new Float64Array(ABREAST);
  for (let p = 0; p < a.xs.length; p++) {
    // Among the same points one half is enough: the other is its mirror.
    const end = a === b ? p + 1 : m;
    for (let q = 0; q < end; q += ABREAST) {
      productsAbreast(rows.V, p, columns.V, q, n, shared);
      for (let k = 0; k < ABREAST && q + k < end; k++)
        covariance[p * m + q + k] += (rows.open[p] * columns.open[q + k]) / precision - shared[k];
    }
    if (a === b) for (let q = 0; q < p; q++) covariance[q * m + p] = covariance[p * m + q];
  }
  return covariance;
}

/** V = L⁻¹c of every point, abreast, and what the mean leaves open, 1 − 1ᵀK⁻¹c. */
function reduced(kriging: Kriging, points: Points): { V: Float64Array; open: Float64Array } {
  const { n, ones } = kriging;
  const targets = scaled(points, kriging.centre, kriging.variogram.range);
  const m = targets.x.length;
  const V = abreast(m, n);
  reduce(kriging, targets, 0, V);
  const open = Float64Array.from({ length: m }, (_, p) => {
    let covered = 0;
    for (let i = 0, at = startAbreast(p, n); i < n; i++, at += ABREAST) covered += ones[i] * V[at];
    return 1 - covered;
  });
  return { V, open };
}

function scaled({ xs, ys }: Points, centre: readonly [number, number], range: number): Scaled {
  const x = new Float64Array(xs.length);
  const y = new Float64Array(xs.length);
  for (let i = 0; i < x.length; i++) {
    x[i] = (xs[i] - centre[0]) / range;
    y[i] = (ys[i] - centre[1]) / range;
  }
  return { x, y };
}

function middle(numbers: ArrayLike<number>): number {
  let low = Infinity;
  let high = -Infinity;
  for (let i = 0; i < numbers.length; i++) {
    low = Math.min(low, numbers[i]);
    high = Math.max(high, numbers[i]);
  }
  return (low + high) / 2;
}

function product(a: Float64Array, b: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += a[i] * b[i];
  return sum;
}
