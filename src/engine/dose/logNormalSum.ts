/** Weighted sums of one log-normal field, each itself taken as log-normal. */
export interface LogNormalSums {
  /** ln of each sum's median. */
  ln: number[];
  /** Covariance of the sums' logarithms, k × k. */
  covariance: number[][];
}

/**
 * Sums with these expected values and covariances, as log-normals that keep both (Fenton 1960; Abu-Dayya & Beaulieu 1994):
 * s_ab = ln(1 + Cov_ab/(E_a·E_b)), ln median = ln E − s_aa/2. A sum of nothing has ln median −∞ and no variance.
 */
export function logNormalSums(
  expected: readonly number[],
  covariance: readonly (readonly number[])[],
): LogNormalSums {
  const ln = expected.map((one, a) =>
    expected.map((other, b) => (one * other > 0 ? Math.log1p(covariance[a][b] / (one * other)) : 0)),
  );
  return { ln: expected.map((one, a) => Math.log(one) - ln[a][a] / 2), covariance: ln };
}
