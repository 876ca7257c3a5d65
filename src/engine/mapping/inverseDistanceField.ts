import { covarianceMatrix, fieldCovariance, sharedCovariance } from './covarianceMatrix';
import { CORRELATION } from './variogram';
import { inverseDistanceMean, inverseDistanceWeights } from './inverseDistance';
import { quadraticForms } from './quadraticForms';
import type { Plane } from './plane';
import type { Points } from './covarianceMatrix';
import type { Predictor } from './field';
import type { Variogram } from './variogram';

/** Points that share one pass over the covariance of the readings, which may be larger than any cache. */
const BLOCK = 32;

/**
 * Inverse distance as a linear predictor: its weights W are its own, and its errors are those any weights have under the
 * variogram, C − WᵀC₀ − C₀ᵀW + WᵀKW (Cressie 1993, section 3.1), so that it has an interval as kriging has.
 */
export function inverseDistanceField(plane: Plane, variogram: Variogram, power: number): Predictor {
  const n = plane.values.length;
  const values = Float64Array.from(plane.values);
  const spots = {
    x: Float64Array.from(plane.xs),
    y: Float64Array.from(plane.ys),
    drop: Float64Array.from(plane.places, ({ height }) => (height - plane.height) ** 2),
  };
  const K = covarianceMatrix(plane, variogram);

  const mean = ({ xs, ys }: Points): Float64Array => {
    const means = new Float64Array(xs.length);
    for (let p = 0; p < means.length; p++) means[p] = inverseDistanceMean(spots, values, xs[p], ys[p], power);
    return means;
  };

  const variance = ({ xs, ys }: Points): Float64Array => {
    const variances = new Float64Array(xs.length);
    const W = new Float64Array(BLOCK * n);
    for (let first = 0; first < variances.length; first += BLOCK) {
      const last = Math.min(first + BLOCK, variances.length);
      for (let p = first; p < last; p++)
        inverseDistanceWeights(spots, xs[p], ys[p], power, W, (p - first) * n);
      quadraticForms(K, n, W, last - first).forEach((form, q) => {
        let common = 0;
        for (let i = 0; i < n; i++) common += W[q * n + i] * shared(xs[first + q], ys[first + q], i);
        variances[first + q] = Math.max(0, variogram.sill + variogram.nugget + form - 2 * common);
      });
    }
    return variances;
  };

  const correlation = CORRELATION[variogram.model];
  const shared = (px: number, py: number, i: number): number => {
    const dx = px - spots.x[i];
    const dy = py - spots.y[i];
    return variogram.sill * correlation(Math.sqrt(dx * dx + dy * dy) / variogram.range);
  };

  /** Of every point, n numbers each: weights W, covariance C with the readings, and WK − C. */
  const weighed = (points: Points) => {
    const m = points.xs.length;
    const W = new Float64Array(m * n);
    const C = sharedCovariance(variogram, points, plane);
    const rest = new Float64Array(m * n);
    for (let p = 0; p < m; p++) {
      inverseDistanceWeights(spots, points.xs[p], points.ys[p], power, W, p * n);
      for (let i = 0; i < n; i++) {
        let sum = -C[p * n + i];
        for (let j = 0; j < n; j++) sum += W[p * n + j] * K[i * n + j];
        rest[p * n + i] = sum;
      }
    }
    return { W, C, rest };
  };

  return {
    mean,
    both: (points) => ({ mean: mean(points), variance: variance(points) }),
    cross(a, b) {
      const m = b.xs.length;
      const rows = weighed(a);
      const columns = a === b ? rows : weighed(b);
      const covariance = fieldCovariance(variogram, a, b);
      for (let p = 0; p < a.xs.length; p++) {
        // Among the same points one half is enough: the other is its mirror.
        const end = a === b ? p + 1 : m;
        for (let q = 0; q < end; q++) {
          let sum = 0;
          for (let i = 0, ia = p * n, ib = q * n; i < n; i++, ia++, ib++)
            sum += rows.rest[ia] * columns.W[ib] - rows.W[ia] * columns.C[ib];
          covariance[p * m + q] += sum;
        }
        if (a === b) for (let q = 0; q < p; q++) covariance[q * m + p] = covariance[p * m + q];
      }
      return covariance;
    },
  };
}
