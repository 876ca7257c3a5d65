import { choleskyWithJitter, solve } from './cholesky';

/** A slope below this share of the data is rounding: nothing is gained by following it. */
const LEVEL = 1e-12;

/**
 * x ≥ 0 of least ‖Ax − b‖², from G = AᵀA (n × n, row-major) and g = Aᵀb: Lawson & Hanson (1974), chapter 23, on the normal
 * equations (Bro & de Jong 1997). At the answer the slopes g − Gx are 0 where x > 0 and not positive where x = 0. Columns
 * are brought to one length first, so that what they measure does not matter; a column of nothing gets 0.
 */
export function nonNegative(G: Float64Array, g: ArrayLike<number>, n: number): Float64Array {
  const length = Float64Array.from({ length: n }, (_, k) => Math.sqrt(G[k * n + k]));
  const counted = [...length.keys()].filter((k) => length[k] > 0);
  const gram = (k: number, l: number) => G[k * n + l] / (length[k] * length[l]);
  const moment = (k: number) => g[k] / length[k];
  const level = LEVEL * Math.max(...counted.map((k) => Math.abs(moment(k))));
  const x = new Float64Array(n);
  const free = new Set<number>();

  const slope = (k: number): number => {
    let sum = moment(k);
    for (const l of free) sum -= gram(k, l) * x[l];
    return sum;
  };
  /** The least squares over the free columns alone, in their order. */
  const unbounded = (columns: readonly number[]): Float64Array => {
    const own = Float64Array.from(columns.flatMap((k) => columns.map((l) => gram(k, l))));
    const cholesky = choleskyWithJitter(own, columns.length, 1);
    if (!cholesky) throw new Error('The columns are not numbers.');
    return solve(cholesky, columns.map(moment));
  };

  // Each column enters once or twice in practice; the bound is Lawson and Hanson's.
  for (let round = 0; round < 3 * n; round++) {
    const held = counted.filter((k) => !free.has(k) && slope(k) > level);
    if (held.length === 0) break;
    free.add(held.reduce((best, k) => (slope(k) > slope(best) ? k : best)));
    for (;;) {
      const columns = [...free].sort((a, b) => a - b);
      const wanted = unbounded(columns);
      const blocked = columns.filter((_, i) => wanted[i] <= 0);
      if (blocked.length === 0) {
        columns.forEach((k, i) => (x[k] = wanted[i]));
        break;
      }
      // As far towards what is wanted as the first bound allows; what meets it is held again.
      const shareOf = (k: number) => x[k] / (x[k] - wanted[columns.indexOf(k)]);
      const first = blocked.reduce((best, k) => (shareOf(k) < shareOf(best) ? k : best));
      const share = shareOf(first);
      columns.forEach((k, i) => (x[k] += share * (wanted[i] - x[k])));
      x[first] = 0;
      free.delete(first);
    }
  }
  return x.map((value, k) => (length[k] > 0 ? value / length[k] : 0));
}
