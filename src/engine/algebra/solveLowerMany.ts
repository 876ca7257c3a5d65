import type { Cholesky } from './cholesky';

/** Where column q begins among columns of n numbers held side by side in fours; its next entry is four further. */
export const startInFours = (q: number, n: number): number => (q >> 2) * 4 * n + (q & 3);

/**
 * L·Y = B for many right-hand sides, in place: V holds them side by side in fours. Entries before row `from` are 0 and stay
 * it. Two rows by four columns at a time: each number that is fetched serves several products, which is what the time of a
 * whole map hangs on.
 */
export function solveLowerMany({ n, lower }: Cholesky, V: Float64Array, from: number): void {
  for (let offset = 0; offset < V.length; offset += 4 * n)
    for (let i = from; i < n; i += 2) {
      const two = i + 1 < n;
      const first = i * n;
      const second = two ? first + n : first;
      const at = offset + 4 * i;
      const next = two ? at + 4 : at;
      let [a0, a1, a2, a3] = [V[at], V[at + 1], V[at + 2], V[at + 3]];
      let [b0, b1, b2, b3] = [V[next], V[next + 1], V[next + 2], V[next + 3]];
      for (let k = from, row = offset + 4 * from; k < i; k++, row += 4) {
        const la = lower[first + k];
        const lb = lower[second + k];
        const v0 = V[row];
        const v1 = V[row + 1];
        const v2 = V[row + 2];
        const v3 = V[row + 3];
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
      if (!two) break;
      const link = lower[second + i];
      const nextPivot = 1 / lower[second + i + 1];
      V[next] = (b0 - link * a0) * nextPivot;
      V[next + 1] = (b1 - link * a1) * nextPivot;
      V[next + 2] = (b2 - link * a2) * nextPivot;
      V[next + 3] = (b3 - link * a3) * nextPivot;
    }
}
