import { choleskyWithJitter, solve, solveLower } from '../algebra/cholesky';
import type { Cholesky } from '../algebra/cholesky';
import { correlation } from './variogram';
import { covarianceMatrix, fieldCovariance } from './covarianceMatrix';
import type { Data, Points } from './covarianceMatrix';
import type { Variogram } from './variogram';

/** Ordinary kriging of one plane's data, solved and ready to be asked. */
export interface Kriging {
  n: number;
  variogram: Variogram;
  /** Places in units of the range from `centre`: the solution is the same wherever the plan lies. */
  x: Float64Array;
  y: Float64Array;
  centre: readonly [number, number];
  /** Of the covariance of the values. */
  cholesky: Cholesky;
  /** The unknown mean, by generalised least squares. */
  mean: number;
  /** K⁻¹(z − mean): the estimate at a place is mean + c·dual (dual form: one kernel a reading). */
  dual: Float64Array;
  /** L⁻¹1 and 1ᵀK⁻¹1. */
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
  const { x, y } = scaled({ xs: data.xs, ys: data.ys }, centre, variogram.range);
  const K = covarianceMatrix(data, variogram);
  const cholesky = choleskyWithJitter(K, n, variogram.sill + variogram.nugget);
  if (!cholesky) throw new Error('The covariance of the readings is not positive definite.');
  const ones = solveLower(cholesky, new Float64Array(n).fill(1));
  const values = solveLower(cholesky, data.values);
  const precision = product(ones, ones, n);
  const mean = product(ones, values, n) / precision;
  const dual = solve(
    cholesky,
    Float64Array.from(data.values, (value) => value - mean),
  );
  return { n, variogram, x, y, centre, cholesky, mean, dual, ones, precision };
}

/** The estimate at each of the points. */
export function krigedMean(kriging: Kriging, points: Points): Float64Array {
  const { n, variogram, dual, mean, x, y } = kriging;
  const targets = scaled(points, kriging.centre, variogram.range);
  const means = new Float64Array(targets.x.length);
  for (let p = 0; p < means.length; p++) {
    let sum = 0;
    for (let i = 0; i < n; i++) {
      const dx = targets.x[p] - x[i];
      const dy = targets.y[p] - y[i];
      sum += dual[i] * correlation(variogram.model, Math.sqrt(dx * dx + dy * dy));
    }
    means[p] = mean + variogram.sill * sum;
  }
  return means;
}

/**
 * What ties each point to the data: V = L⁻¹c (n a point, point after point) and what the mean leaves open,
 * 1 − 1ᵀK⁻¹c. Error covariance of two points is C − V·V + open·open / precision.
 */
export function ties(kriging: Kriging, points: Points): { V: Float64Array; open: Float64Array } {
  const { n, variogram, x, y, ones } = kriging;
  const { lower } = kriging.cholesky;
  const targets = scaled(points, kriging.centre, variogram.range);
  const m = targets.x.length;
  const V = new Float64Array(n * m);
  const open = new Float64Array(m);
  for (let p = 0; p < m; p++) {
    const at = p * n;
    let covered = 0;
    for (let i = 0; i < n; i++) {
      const dx = targets.x[p] - x[i];
      const dy = targets.y[p] - y[i];
      let sum = variogram.sill * correlation(variogram.model, Math.sqrt(dx * dx + dy * dy));
      for (let k = 0; k < i; k++) sum -= lower[i * n + k] * V[at + k];
      V[at + i] = sum / lower[i * n + i];
      covered += ones[i] * V[at + i];
    }
    open[p] = 1 - covered;
  }
  return { V, open };
}

/** Variance of the estimate's error at each of the points: of the field there, not of a reading. */
export function krigedVariance(kriging: Kriging, points: Points): Float64Array {
  const { n, variogram, precision } = kriging;
  const { V, open } = ties(kriging, points);
  return Float64Array.from(open, (rest, p) => {
    let square = 0;
    for (let i = p * n; i < p * n + n; i++) square += V[i] * V[i];
    return Math.max(0, variogram.nugget + variogram.sill - square + (rest * rest) / precision);
  });
}

/** Covariance of the estimates' errors at points a and b, row-major a × b; a place with itself includes the nugget. */
export function krigedCovariance(kriging: Kriging, a: Points, b: Points): Float64Array {
  const { n, precision } = kriging;
  const rows = ties(kriging, a);
  const columns = a === b ? rows : ties(kriging, b);
  const covariance = fieldCovariance(kriging.variogram, a, b);
  const m = b.xs.length;
  for (let p = 0; p < a.xs.length; p++)
    for (let q = 0; q < m; q++) {
      let shared = 0;
      for (let i = 0; i < n; i++) shared += rows.V[p * n + i] * columns.V[q * n + i];
      covariance[p * m + q] += (rows.open[p] * columns.open[q]) / precision - shared;
    }
  return covariance;
}

function scaled({ xs, ys }: Points, centre: readonly [number, number], range: number) {
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

function product(a: Float64Array, b: Float64Array, n: number): number {
  let sum = 0;
  for (let i = 0; i < n; i++) sum += a[i] * b[i];
  return sum;
}
