import { ALIKE } from './leaveOneOut';

/** Places as inverse distance sees them from one height: a reading lower down is further off. */
export interface Spots {
  x: ArrayLike<number>;
  y: ArrayLike<number>;
  /** Square of each place's difference in height. */
  drop: ArrayLike<number>;
}

/** Powers that are tried: halves, since no survey tells finer ones apart. */
const POWERS = Array.from({ length: 12 }, (_, i) => (i + 1) / 2);

/**
 * Weights of the places at (px, py), sum 1, into `weights` from `offset`: 1/dᵖ (Shepard 1968), p a multiple of ½. A place
 * at the target takes all; several share.
 */
export function inverseDistanceWeights(
  { x, y, drop }: Spots,
  px: number,
  py: number,
  power: number,
  weights: Float64Array,
  offset: number,
): void {
  const n = x.length;
  const halves = Math.round(2 * power);
  let [total, touching] = [0, 0];
  for (let i = 0; i < n; i++) {
    const dx = px - x[i];
    const dy = py - y[i];
    const square = dx * dx + dy * dy + drop[i];
    // Roots and products: a quarter of the time that a power takes.
    const root = Math.sqrt(Math.sqrt(square));
    let inverse = 1;
    for (let k = 0; k < halves; k++) inverse *= root;
    if (inverse === 0) touching++;
    weights[offset + i] = 1 / inverse;
    total += 1 / inverse;
  }
  for (let i = offset; i < offset + n; i++)
    weights[i] = touching > 0 ? (weights[i] === Infinity ? 1 / touching : 0) : weights[i] / total;
}

/** The power whose leave-one-out error, given by `error`, is least; of those alike the one nearest to 2. */
export function bestPower(error: (power: number) => number): number {
  const tried = POWERS.map((power) => ({ power, error: error(power) }));
  const least = Math.min(...tried.map(({ error }) => error));
  return tried
    .filter(({ error }) => error <= least + ALIKE)
    .reduce((best, next) => (Math.abs(next.power - 2) < Math.abs(best.power - 2) ? next : best)).power;
}
