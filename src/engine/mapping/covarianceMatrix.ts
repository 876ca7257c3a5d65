import { CORRELATION } from './variogram';
import type { Variogram } from './variogram';

/** Values at places of one plane; `noise` is the variance of each value about the field, apart from the nugget. */
export interface Data extends Points {
  values: ArrayLike<number>;
  noise: ArrayLike<number>;
}

/** Places of the plan, metres. */
export interface Points {
  xs: ArrayLike<number>;
  ys: ArrayLike<number>;
}

/** Covariance of the values, n × n, row-major: the field's own, with nugget and noise on the diagonal. */
export function covarianceMatrix({ xs, ys, noise }: Data, variogram: Variogram): Float64Array {
  const { nugget, sill, range } = variogram;
  const correlation = CORRELATION[variogram.model];
  const n = xs.length;
  const K = new Float64Array(n * n);
  for (let i = 0; i < n; i++) {
    for (let j = 0; j < i; j++) {
      const dx = xs[i] - xs[j];
      const dy = ys[i] - ys[j];
      // Math.hypot guards against numbers no plan has and takes ten times as long.
      const h = Math.sqrt(dx * dx + dy * dy);
      K[i * n + j] = sill * correlation(h / range);
      K[j * n + i] = K[i * n + j];
    }
    K[i * n + i] = sill + nugget + noise[i];
  }
  return K;
}

/** Covariance of the field itself between points a and b, row-major a × b; a point with itself includes the nugget. */
export function fieldCovariance(variogram: Variogram, a: Points, b: Points): Float64Array {
  return covariances(variogram, a, b, variogram.nugget);
}

/** The same between targets and readings: a target is beside a reading, never the very place, so no nugget is shared. */
export function sharedCovariance(variogram: Variogram, targets: Points, readings: Points): Float64Array {
  return covariances(variogram, targets, readings, 0);
}

function covariances({ model, sill, range }: Variogram, a: Points, b: Points, atZero: number): Float64Array {
  const m = b.xs.length;
  const correlation = CORRELATION[model];
  const covariance = new Float64Array(a.xs.length * m);
  for (let p = 0; p < a.xs.length; p++)
    for (let q = 0; q < m; q++) {
      const dx = a.xs[p] - b.xs[q];
      const dy = a.ys[p] - b.ys[q];
      const h = Math.sqrt(dx * dx + dy * dy);
      covariance[p * m + q] = sill * correlation(h / range) + (h === 0 ? atZero : 0);
    }
  return covariance;
}
