import { sharedCovariance } from './covarianceMatrix';
import { solve, solveLower } from '../algebra/cholesky';
import type { Kriging } from './kriging';
import type { Points } from './covarianceMatrix';

/**
 * Weights of the data at each point, row-major m × n: K⁻¹(c + 1·(1 − 1ᵀK⁻¹c)/1ᵀK⁻¹1) (Cressie 1993, eq. 3.2.12). They sum
 * to 1. `data` is what was kriged.
 */
export function krigedWeights(
  { n, variogram, cholesky, ones, precision }: Kriging,
  data: Points,
  points: Points,
): Float64Array {
  const C = sharedCovariance(variogram, points, data);
  const weights = new Float64Array(C.length);
  for (let p = 0; p < points.xs.length; p++) {
    const c = C.subarray(p * n, (p + 1) * n);
    const reduced = solveLower(cholesky, c);
    const covered = reduced.reduce((sum, value, i) => sum + value * ones[i], 0);
    const open = (1 - covered) / precision;
    weights.set(
      solve(
        cholesky,
        c.map((value) => value + open),
      ),
      p * n,
    );
  }
  return weights;
}
