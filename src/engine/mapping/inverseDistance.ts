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
    const weight = inversePower(dx * dx + dy * dy + drop[i], halves);
    if (weight === Infinity) touching++;
    weights[offset + i] = weight;
    total += weight;
  }
  for (let i = offset; i < offset + n; i++)
    weights[i] = touching > 0 ? (weights[i] === Infinity ? 1 / touching : 0) : weights[i] / total;
}

/** The mean under those weights, of values that are asked for by themselves at every cell of a map. */
export function inverseDistanceMean(
  { x, y, drop }: Spots,
  values: ArrayLike<number>,
  px: number,
  py: number,
  power: number,
): number {
  const halves = Math.round(2 * power);
  let [sum, total, touched, touching] = [0, 0, 0, 0];
  for (let i = 0; i < x.length; i++) {
    const dx = px - x[i];
    const dy = py - y[i];
    const weight = inversePower(dx * dx + dy * dy + drop[i], halves);
    if (weight === Infinity) {
      touched += values[i];
      touching++;
    } else {
      sum += weight * values[i];
      total += weight;
    }
  }
  return touching > 0 ? touched / touching : sum / total;
}

/** 1/dᵖ from d² and 2p: (d²)^⌊p/2⌋ and at most two roots, a fraction of the time that a power takes. */
function inversePower(square: number, halves: number): number {
  let power = 1;
  for (let k = halves >> 2; k > 0; k--) power *= square;
  if (halves & 2) power *= Math.sqrt(square);
  if (halves & 1) power *= Math.sqrt(Math.sqrt(square));
  return 1 / power;
}

/** The power whose leave-one-out error, given by `error`, is least; of those alike the one nearest to 2. */
export function bestPower(error: (power: number) => number): number {
  const tried = POWERS.map((power) => ({ power, error: error(power) }));
  const least = Math.min(...tried.map(({ error }) => error));
  return tried
    .filter(({ error }) => error <= least + ALIKE)
    .reduce((best, next) => (Math.abs(next.power - 2) < Math.abs(best.power - 2) ? next : best)).power;
}
