import { covarianceMatrix, fieldCovariance, sharedCovariance } from './covarianceMatrix';
import { inverseDistanceWeights } from './inverseDistance';
import type { Plane } from './plane';
import type { Points } from './covarianceMatrix';
import type { Predictor } from './field';
import type { Variogram } from './variogram';

/**
 * Inverse distance as a linear predictor: its weights W are its own, and its errors are those any weights have under the
 * variogram, C − WᵀC₀ − C₀ᵀW + WᵀKW (Cressie 1993, section 3.1), so that it has an interval as kriging has.
 */
export function inverseDistanceField(plane: Plane, variogram: Variogram, power: number): Predictor {
  const { values } = plane;
  const n = values.length;
  const spots = {
    x: Float64Array.from(plane.xs),
    y: Float64Array.from(plane.ys),
    drop: Float64Array.from(plane.places, ({ height }) => (height - plane.height) ** 2),
  };
  const K = covarianceMatrix(plane, variogram);

  const weightsOf = ({ xs, ys }: Points): Float64Array => {
    const all = new Float64Array(xs.length * n);
    for (let p = 0; p < xs.length; p++) inverseDistanceWeights(spots, xs[p], ys[p], power, all, p * n);
    return all;
  };

  /** W'K, n a point. */
  const times = (W: Float64Array, m: number): Float64Array => {
    const WK = new Float64Array(m * n);
    for (let p = 0; p < m; p++)
      for (let i = 0; i < n; i++) {
        let sum = 0;
        for (let j = 0; j < n; j++) sum += W[p * n + j] * K[i * n + j];
        WK[p * n + i] = sum;
      }
    return WK;
  };

  return {
    mean({ xs, ys }) {
      const mean = new Float64Array(xs.length);
      const weights = new Float64Array(n);
      for (let p = 0; p < mean.length; p++) {
        inverseDistanceWeights(spots, xs[p], ys[p], power, weights);
        let sum = 0;
        for (let i = 0; i < n; i++) sum += weights[i] * values[i];
        mean[p] = sum;
      }
      return mean;
    },
    both(points) {
      const m = points.xs.length;
      const W = weightsOf(points);
      const WK = times(W, m);
      const C = sharedCovariance(variogram, points, plane);
      const mean = new Float64Array(m);
      const variance = new Float64Array(m);
      for (let p = 0; p < m; p++) {
        let error = variogram.sill + variogram.nugget;
        for (let i = 0, at = p * n; i < n; i++, at++) {
          mean[p] += W[at] * values[i];
          error += W[at] * (WK[at] - 2 * C[at]);
        }
        variance[p] = Math.max(0, error);
      }
      return { mean, variance };
    },
    cross(a, b) {
      const m = b.xs.length;
      const [Wa, Wb] = [weightsOf(a), weightsOf(b)];
      const WKa = times(Wa, a.xs.length);
      const [Ca, Cb] = [sharedCovariance(variogram, a, plane), sharedCovariance(variogram, b, plane)];
      const covariance = fieldCovariance(variogram, a, b);
      for (let p = 0; p < a.xs.length; p++)
        for (let q = 0; q < m; q++) {
          let sum = 0;
          for (let i = 0; i < n; i++) {
            const [ia, ib] = [p * n + i, q * n + i];
            sum += WKa[ia] * Wb[ib] - Wa[ia] * Cb[ib] - Wb[ib] * Ca[ia];
          }
          covariance[p * m + q] += sum;
        }
      return covariance;
    },
  };
}
