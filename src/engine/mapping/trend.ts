import { withValues } from './kriging';
import type { Kriging } from './kriging';

// Universal kriging stands on ordinary kriging (Cressie 1993, section 3.4): with Q = K⁻¹ − K⁻¹11ᵀK⁻¹/1ᵀK⁻¹1, the coefficients β of a
// trend Uβ have the information UᵀQU and are told UᵀQz by the values; the constant is the mean's. Kriging takes z − Uβ; the doubt
// of β adds what the readings leave open of U at a place, on both sides of the covariance of β.

/** UᵀQU of one plane, row-major: a row of U is what one unit of a coefficient changes of each value. */
export function trendInformation(kriging: Kriging, U: readonly ArrayLike<number>[]): Float64Array {
  const n = U.length;
  const residuals = U.map((part) => withValues(kriging, part).residuals);
  const information = new Float64Array(n * n);
  for (let k = 0; k < n; k++)
    for (let l = 0; l < n; l++)
      information[k * n + l] = residuals[k].reduce((sum, value, i) => sum + value * residuals[l][i], 0);
  return information;
}

/** What the doubt of the coefficients adds to the covariance of place p with place q, of each part's open rest there. */
export function trendCovariance(
  covariance: Float64Array,
  a: readonly ArrayLike<number>[],
  p: number,
  b: readonly ArrayLike<number>[],
  q: number,
): number {
  const n = a.length;
  let sum = 0;
  for (let k = 0; k < n; k++) for (let l = 0; l < n; l++) sum += a[k][p] * covariance[k * n + l] * b[l][q];
  return sum;
}

/** A place tells of the coefficients no more than this share of all that is known of them. */
const MOST = 0.99;

/**
 * What the doubt adds to the variance of a place left out: its own part of the information is taken off again (Sherman &
 * Morrison 1950). `open` is what the others leave of each part, `variance` what it is without the doubt.
 */
export function trendVarianceWithout(
  covariance: Float64Array,
  open: readonly number[],
  variance: number,
): number {
  const rest = open.map((value) => [value]);
  const sum = trendCovariance(covariance, rest, 0, rest, 0);
  return sum / (1 - Math.min(MOST, sum / variance));
}
