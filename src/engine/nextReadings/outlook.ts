import type { Field } from '../mapping/field';
import type { Points } from '../mapping/covarianceMatrix';

/** A weighted sum of ln B over points of a plane: of one point, or of a floor. */
export interface Sum extends Points {
  weights: ArrayLike<number>;
}

/** What readings to come would leave unsure of some sums in one plane. */
export interface Outlook {
  /** Of each sum's error, after the readings taken so far. */
  readonly variances: Float64Array;
  /** What one more reading at a spot would take from a sum's variance. */
  lowers(spot: number, sum: number): number;
  /** Of a reading at a spot about its estimate. */
  spread(spot: number): number;
  read(spot: number): void;
}

/** A reading is beside a target, never the very place: so that no nugget is taken to be shared. Metres. */
const BESIDE = 1e-9;

/**
 * The covariance of an estimate's errors, brought down by readings that are still to come: a value at c of variance s² about
 * the field turns cov(a, b) into cov(a, b) − cov(a, c)·cov(c, b)/(cov(c, c) + s²), whatever it will show (the conditional
 * covariance of normal errors: Rasmussen & Williams 2006, eq. 2.24, a reading at a time). Exact for kriging with its
 * variogram kept; for inverse distance, whose errors are not those of a best predictor, the best a reading can do. `noise`:
 * variance of ln B of a reading at each spot.
 */
export function outlookOf(
  field: Pick<Field, 'predict' | 'cross'>,
  spots: Points,
  noise: ArrayLike<number>,
  sums: readonly Sum[],
): Outlook {
  const beside = { xs: Float64Array.from(spots.xs, (x) => x + BESIDE), ys: spots.ys };
  const n = beside.xs.length;
  const m = sums.length;
  const K = field.cross(beside, beside);
  const H = shared(field, beside, sums);
  const variances = variancesOf(field, sums);
  const spread = (spot: number) => K[spot * n + spot] + noise[spot];
  const lowers = (spot: number, sum: number) => H[spot * m + sum] ** 2 / spread(spot);
  return {
    variances,
    lowers,
    spread,
    read(spot) {
      for (let k = 0; k < m; k++) variances[k] = Math.max(0, variances[k] - lowers(spot, k));
      const whole = spread(spot);
      const row = K.slice(spot * n, (spot + 1) * n);
      const told = H.slice(spot * m, (spot + 1) * m);
      for (let i = 0; i < n; i++) {
        const share = row[i] / whole;
        for (let k = 0; k < m; k++) H[i * m + k] -= share * told[k];
        for (let j = 0; j < n; j++) K[i * n + j] -= share * row[j];
      }
    },
  };
}

/** Covariance of the error at each spot with that of each sum, spots × sums. */
function shared({ cross }: Pick<Field, 'cross'>, spots: Points, sums: readonly Sum[]): Float64Array {
  const n = spots.xs.length;
  const m = sums.length;
  const all = {
    xs: sums.flatMap(({ xs }) => Array.from(xs)),
    ys: sums.flatMap(({ ys }) => Array.from(ys)),
  };
  const C = cross(spots, all);
  const H = new Float64Array(n * m);
  for (let i = 0, at = 0; i < n; i++)
    sums.forEach(({ weights }, k) => {
      for (let p = 0; p < weights.length; p++, at++) H[i * m + k] += weights[p] * C[at];
    });
  return H;
}

function variancesOf(
  { predict, cross }: Pick<Field, 'predict' | 'cross'>,
  sums: readonly Sum[],
): Float64Array {
  const single = sums.filter(({ weights }) => weights.length === 1);
  const { variance } = predict(
    single.map(({ xs }) => xs[0]),
    single.map(({ ys }) => ys[0]),
    { variance: true },
  );
  let next = 0;
  return Float64Array.from(sums, (sum) => {
    const { weights } = sum;
    if (weights.length === 1) return weights[0] ** 2 * variance![next++];
    const C = cross(sum, sum);
    let total = 0;
    for (let p = 0, at = 0; p < weights.length; p++)
      for (let q = 0; q < weights.length; q++, at++) total += weights[p] * weights[q] * C[at];
    return Math.max(0, total);
  });
}
