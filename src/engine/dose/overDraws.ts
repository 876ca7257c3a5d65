import { HALF_90 } from '../mapping/interval';
import { normalShare } from '../algebra/normalShare';
import type { LogNormalSums } from './logNormalSum';

/** Weighted sums of a field as one draw of the estimate has them, and that draw's share among all. */
export interface SumsOfDraw extends LogNormalSums {
  weight: number;
}

/** The middle and the 90 % interval of a sum. */
interface Middle {
  median: number;
  low: number;
  high: number;
}

/** What all draws together say of sum `a`: log-normal in each, over draws a mixture. */
export function middleOf(draws: readonly SumsOfDraw[], a: number): Middle {
  const parts = draws.map(({ weight, ln, covariance }) => ({
    weight,
    ln: ln[a],
    sd: Math.sqrt(covariance[a][a]),
  }));
  return { median: quantile(parts, 0), low: quantile(parts, -HALF_90), high: quantile(parts, HALF_90) };
}

/**
 * Probability that sum `b` is less than sum `a`, both in the same draw. With L the ln of their medians there and s their
 * covariance: P = Φ((L_a − L_b) / √(s_aa + s_bb − 2·s_ab)); over draws the mean by their shares.
 */
export function oddsBetween(draws: readonly SumsOfDraw[], a: number, b: number): number {
  let [lower, all] = [0, 0];
  for (const { weight, ln, covariance } of draws) {
    const gain = ln[a] - ln[b];
    const variance = covariance[a][a] + covariance[b][b] - 2 * covariance[a][b];
    // Below this only rounding is left: the sums differ surely, or not at all.
    const sure = Math.abs(gain) < 1e-9 ? 0.5 : Number(gain > 0);
    lower += weight * (variance > 1e-12 ? normalShare(gain / Math.sqrt(variance)) : sure);
    all += weight;
  }
  // Shares add up to one but for rounding, and what all draws say is sure.
  return lower / all;
}

interface Part {
  weight: number;
  ln: number;
  sd: number;
}

/** What is left of the share to be found, and of the bracket about ln of the quantile: below what any field is known to. */
const NEAR = 1e-12;
const CLOSE = 1e-10;

/**
 * Where a standard normal has as much below z as the mixture has below it; for one law its own ln + z·sd. No part has it
 * outside of what all parts have for themselves; in between, false position that halves the weight of an end which stays
 * (the Illinois method: Dowell & Jarratt 1971), every third step by halving.
 */
function quantile(parts: readonly Part[], z: number): number {
  const share = normalShare(z);
  const off = (at: number) =>
    parts.reduce(
      (sum, { weight, ln, sd }) => sum + weight * (sd > 0 ? normalShare((at - ln) / sd) : Number(ln <= at)),
      -share,
    );
  const own = parts.map(({ ln, sd }) => ln + z * sd);
  let [low, high] = [Math.min(...own), Math.max(...own)];
  if (low === high) return Math.exp(low);
  let [under, over] = [off(low), off(high)];
  if (under >= 0) return Math.exp(low);
  for (let [last, turn] = [0, 1]; high - low > CLOSE; turn++) {
    const middle = turn % 3 === 0 ? (low + high) / 2 : low + ((high - low) * under) / (under - over);
    const value = off(middle);
    if (Math.abs(value) < NEAR) return Math.exp(middle);
    if (value < 0) {
      [low, under] = [middle, value];
      if (last < 0) over /= 2;
    } else {
      [high, over] = [middle, value];
      if (last > 0) under /= 2;
    }
    last = value;
  }
  return Math.exp((low + high) / 2);
}
