/** Weighted sums of one log-normal field, each itself taken as log-normal. */
export interface LogNormalSums {
  /** ln of each sum's median. */
  ln: number[];
  /** Covariance of the sums' logarithms, k × k. */
  covariance: number[][];
}

/**
 * Sums Σ wᵢ·exp(Xᵢ) of correlated normal Xᵢ with mean μ (length m) and covariance C (m × m, row-major), one for each row of
 * weights, as log-normals that keep the sums' own means and covariances (Fenton 1960; Abu-Dayya & Beaulieu 1994):
 * mᵢ = exp(μᵢ + Cᵢᵢ/2), E = Σ wᵢmᵢ, s_ab = ln(1 + Σᵢⱼ wᵢwⱼmᵢmⱼ(exp Cᵢⱼ − 1)/(E_a·E_b)), ln median = ln E − s_aa/2.
 * A sum of no weight has ln median −∞ and no variance.
 */
export function logNormalSums(
  mean: ArrayLike<number>,
  covariance: ArrayLike<number>,
  weights: readonly ArrayLike<number>[],
): LogNormalSums {
  const m = mean.length;
  const parts = weights.map((row) =>
    Float64Array.from({ length: m }, (_, i) => row[i] * Math.exp(mean[i] + covariance[i * m + i] / 2)),
  );
  const totals = parts.map((part) => part.reduce((sum, value) => sum + value, 0));
  const shared = parts.map(() => parts.map(() => 0));
  const counting = Array.from({ length: m }, (_, i) => i).filter((i) => parts.some((part) => part[i] !== 0));
  for (const i of counting) {
    for (const j of counting) {
      if (j > i) break;
      const excess = Math.expm1(covariance[i * m + j]) / (i === j ? 2 : 1);
      for (let a = 0; a < parts.length; a++) {
        for (let b = a; b < parts.length; b++)
          shared[a][b] += (parts[a][i] * parts[b][j] + parts[a][j] * parts[b][i]) * excess;
      }
    }
  }
  const lnCovariance = parts.map((_, a) =>
    parts.map((__, b) => {
      const product = totals[a] * totals[b];
      return product > 0 ? Math.log1p(shared[Math.min(a, b)][Math.max(a, b)] / product) : 0;
    }),
  );
  return { ln: totals.map((total, a) => Math.log(total) - lnCovariance[a][a] / 2), covariance: lnCovariance };
}
