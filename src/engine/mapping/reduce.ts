import { CORRELATION } from './variogram';
import { ABREAST, solveLowerMany, startAbreast } from '../algebra/solveLowerMany';
import type { Cholesky } from '../algebra/cholesky';
import type { Variogram } from './variogram';

/** Places in units of the variogram's range, from the middle of the data: a solution is the same wherever the plan lies. */
export interface Scaled {
  x: Float64Array;
  y: Float64Array;
}

/** L⁻¹c of points from p on, abreast, as many as V has room for; past the last point the last stands in. */
export function reduce(
  { x, y, variogram, cholesky }: Scaled & { variogram: Variogram; cholesky: Cholesky },
  targets: Scaled,
  p: number,
  V: Float64Array,
): void {
  const { n } = cholesky;
  const { sill } = variogram;
  const correlation = CORRELATION[variogram.model];
  const last = targets.x.length - 1;
  for (let q = 0; q * n < V.length; q++) {
    const px = targets.x[Math.min(p + q, last)];
    const py = targets.y[Math.min(p + q, last)];
    for (let i = 0, at = startAbreast(q, n); i < n; i++, at += ABREAST) {
      const dx = px - x[i];
      const dy = py - y[i];
      V[at] = sill * correlation(Math.sqrt(dx * dx + dy * dy));
    }
  }
  solveLowerMany(cholesky, V, 0);
}
