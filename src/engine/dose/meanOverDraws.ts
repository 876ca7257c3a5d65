import { logNormalSums } from './logNormalSum';
import { HALF_90 } from '../mapping/interval';
import { normalShare } from '../algebra/normalShare';
import type { Draw } from '../mapping/field';

/** µT: the middle and the 90 % interval of a mean field. */
export interface MeanField {
  median: number;
  low: number;
  high: number;
}

/**
 * The weighted mean of the field over points of which an estimate gives draws: in each draw ln B is normal, the mean
 * log-normal (see `logNormalSums`); over draws a mixture, whose quantiles are found by halving.
 */
export function meanOverDraws(draws: readonly Draw[], weights: ArrayLike<number>): MeanField {
  const parts = draws.map(({ weight, mean, covariance }) => {
    const { ln, covariance: square } = logNormalSums(mean, covariance, [weights]);
    return { weight, ln: ln[0], sd: Math.sqrt(square[0][0]) };
  });
  return { median: quantile(parts, 0), low: quantile(parts, -HALF_90), high: quantile(parts, HALF_90) };
}

interface Part {
  weight: number;
  ln: number;
  sd: number;
}

/** Where a standard normal has as much below z as the mixture has below it; for one law its own ln + z·sd. */
function quantile(parts: readonly Part[], z: number): number {
  if (parts.length === 1) return Math.exp(parts[0].ln + z * parts[0].sd);
  const share = normalShare(z);
  let low = Math.min(...parts.map(({ ln, sd }) => ln - 8 * sd));
  let high = Math.max(...parts.map(({ ln, sd }) => ln + 8 * sd));
  // To a millionth: below what any field is known to.
  while (high - low > 1e-6) {
    const middle = (low + high) / 2;
    const below = parts.reduce(
      (sum, { weight, ln, sd }) =>
        sum + weight * (sd > 0 ? normalShare((middle - ln) / sd) : Number(ln <= middle)),
      0,
    );
    if (below < share) low = middle;
    else high = middle;
  }
  return Math.exp((low + high) / 2);
}
