import { covarianceMatrix, fieldCovariance, sharedCovariance } from './covarianceMatrix';
import { CORRELATION } from './variogram';
import { inverseDistanceWeights } from './inverseDistance';
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
    const weights = new Float64Array(n);
    for (let p = 0; p < means.length; p++) {
      inverseDistanceWeights(spots, xs[p], ys[p], power, weights, 0);
      for (let i = 0; i < n; i++) means[p] += weights[i] * values[i];
    }
    return means;
  };

  const variance = ({ xs, ys }: Points): Float64Array => {
    const variances = new Float64Array(xs.length).fill(variogram.sill + variogram.nugget);
    const W = new Float64Array(BLOCK * n);
    for (let first = 0; first < variances.length; first += BLOCK) {
      const last = Math.min(first + BLOCK, variances.length);
      for (let p = first; p < last; p++)
        inverseDistanceWeights(spots, xs[p], ys[p], power, W, (p - first) * n);
      for (let i = 0; i < n; i++)
        for (let p = first, at = 0; p < last; p++, at += n) {
          // wᵀKw by its lower half: what i adds to the places before it.
          let row = K[i * n + i] * W[at + i];
          for (let j = 0; j < i; j++) row += 2 * K[i * n + j] * W[at + j];
          variances[p] += W[at + i] * (row - 2 * shared(xs[p], ys[p], i));
        }
    }
    return variances.map((value) => Math.max(0, value));
  };

  const correlation = CORRELATION[variogram.model];
  const shared = (px: number, py: number, i: number): number => {
    const dx = px - spots.x[i];
    const dy = py - spots.y[i];
    return variogram.sill * correlation(Math.sqrt(dx * dx + dy * dy) / variogram.range);
  };

  /** Weights of every point, n a point, and what they make of K. */
  const weighed = ({ xs, ys }: Points): { W: Float64Array; WK: Float64Array } => {
    const W = new Float64Array(xs.length * n);
    const WK = new Float64Array(xs.length * n);
    for (let p = 0; p < xs.length; p++) {
      inverseDistanceWeights(spots, xs[p], ys[p], power, W, p * n);
      for (let i = 0; i < n; i++) for (let j = 0; j < n; j++) WK[p * n + i] += W[p * n + j] * K[i * n + j];
    }
    return { W, WK };
  };

  return {
    mean,
    both: (points) => ({ mean: mean(points), variance: variance(points) }),
    cross(a, b) {
      const m = b.xs.length;
      const rows = weighed(a);
      const columns = a === b ? rows : weighed(b);
      const [Ca, Cb] = [sharedCovariance(variogram, a, plane), sharedCovariance(variogram, b, plane)];
      const covariance = fieldCovariance(variogram, a, b);
      for (let p = 0; p < a.xs.length; p++)
        for (let q = 0; q < m; q++) {
          let sum = 0;
          for (let i = 0, ia = p * n, ib = q * n; i < n; i++, ia++, ib++)
            sum += rows.WK[ia] * columns.W[ib] - rows.W[ia] * Cb[ib] - columns.W[ib] * Ca[ia];
          covariance[p * m + q] += sum;
        }
      return covariance;
    },
  };
}
