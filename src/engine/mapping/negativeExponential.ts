/** Steps of the table to a unit of t: a power of two, so that k / STEPS is exact. */
const STEPS = 64;

/** Beyond this exp(−t) is under 1e-17 and taken as 0. */
const END = 40;

const TABLE = Float64Array.from({ length: STEPS * END + 1 }, (_, k) => Math.exp(-k / STEPS));

/**
 * exp(−t) for t ≥ 0, relative error under 1e-12: the nearest step of a table times a short Taylor series of what is left.
 * It is what a map spends its time on, and three times as fast as Math.exp; and the same to the bit on every machine that
 * agrees on 2,561 values.
 */
export function negativeExponential(t: number): number {
  if (!(t < END)) return 0;
  const k = (t * STEPS + 0.5) | 0;
  const rest = k / STEPS - t;
  return TABLE[k] * (1 + rest * (1 + rest * (1 / 2 + rest * (1 / 6 + rest / 24))));
}
