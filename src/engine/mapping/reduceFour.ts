import { CORRELATION } from './variogram';
import type { Cholesky } from '../algebra/cholesky';
import type { Variogram } from './variogram';

/** Places in units of the variogram's range, from the middle of the data: a solution is the same wherever the plan lies. */
export interface Scaled {
  x: Float64Array;
  y: Float64Array;
}

/**
 * L⁻¹c of four points from p on, side by side into V at `offset` (past the last point the last stands in). Forward
 * substitution two rows by four points at a time: each number that is fetched serves several products, which is what the
 * time of a whole map hangs on.
 */
export function reduceFour(
  { x, y, variogram, cholesky }: Scaled & { variogram: Variogram; cholesky: Cholesky },
  targets: Scaled,
  p: number,
  V: Float64Array,
  offset: number,
): void {
  const { lower, n } = cholesky;
  const { sill } = variogram;
  const correlation = CORRELATION[variogram.model];
  const last = targets.x.length - 1;
  for (let q = 0; q < 4; q++) {
    const px = targets.x[Math.min(p + q, last)];
    const py = targets.y[Math.min(p + q, last)];
    for (let i = 0, at = offset + q; i < n; i++, at += 4) {
      const dx = px - x[i];
      const dy = py - y[i];
      V[at] = sill * correlation(Math.sqrt(dx * dx + dy * dy));
    }
  }
  for (let i = 0; i < n; i += 2) {
    const two = i + 1 < n;
    const first = i * n;
    const second = two ? first + n : first;
    const at = offset + 4 * i;
    const next = two ? at + 4 : at;
    let [a0, a1, a2, a3] = [V[at], V[at + 1], V[at + 2], V[at + 3]];
    let [b0, b1, b2, b3] = [V[next], V[next + 1], V[next + 2], V[next + 3]];
    for (let k = 0, from = offset; k < i; k++, from += 4) {
      const la = lower[first + k];
      const lb = lower[second + k];
      const v0 = V[from];
      const v1 = V[from + 1];
      const v2 = V[from + 2];
      const v3 = V[from + 3];
      a0 -= la * v0;
      a1 -= la * v1;
      a2 -= la * v2;
      a3 -= la * v3;
      b0 -= lb * v0;
      b1 -= lb * v1;
      b2 -= lb * v2;
      b3 -= lb * v3;
    }
    const pivot = 1 / lower[first + i];
    V[at] = a0 *= pivot;
    V[at + 1] = a1 *= pivot;
    V[at + 2] = a2 *= pivot;
    V[at + 3] = a3 *= pivot;
    if (!two) return;
    const link = lower[second + i];
    const nextPivot = 1 / lower[second + i + 1];
    V[next] = (b0 - link * a0) * nextPivot;
    V[next + 1] = (b1 - link * a1) * nextPivot;
    V[next + 2] = (b2 - link * a2) * nextPivot;
    V[next + 3] = (b3 - link * a3) * nextPivot;
  }
}
