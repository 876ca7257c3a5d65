/** Weights that add to one, and the shape k of their tail: over 0.7 they are not to be trusted. */
export interface Smoothed {
  weights: Float64Array;
  k: number;
}

/** Fewer weights than this in the tail tell nothing of its shape. */
const LEAST_TAIL = 5;

/**
 * Importance weights from the logarithms of the ratios, the largest replaced by the quantiles of a generalised Pareto law
 * fitted to them (Vehtari, Simpson, Gelman, Yao & Gabry 2024, Algorithm 1), so that no single ratio decides.
 */
export function paretoSmoothed(logRatios: ArrayLike<number>): Smoothed {
  const count = logRatios.length;
  const most = Array.from(logRatios).reduce((a, b) => Math.max(a, b), -Infinity);
  const weights = Float64Array.from(logRatios, (ratio) => Math.exp(ratio - most));
  const order = Array.from(weights, (_, i) => i).sort((a, b) => weights[a] - weights[b]);
  const tail = Math.ceil(Math.min(0.2 * count, 3 * Math.sqrt(count)));
  let k = Infinity;
  if (tail >= LEAST_TAIL && tail < count) {
    const cutoff = weights[order[count - tail - 1]];
    const excesses = order.slice(count - tail).map((i) => weights[i] - cutoff);
    // Equal ratios have no tail.
    if (excesses[0] <= 0) k = excesses[tail - 1] <= 0 ? -Infinity : Infinity;
    else {
      const law = generalisedPareto(excesses);
      ({ k } = law);
      excesses.forEach((_, j) => {
        weights[order[count - tail + j]] = Math.min(1, cutoff + quantile(law, (j + 0.5) / tail));
      });
    }
  }
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  return { weights: weights.map((weight) => weight / total), k };
}

interface Law {
  k: number;
  sigma: number;
}

const quantile = ({ k, sigma }: Law, share: number): number =>
  Math.abs(k) < 1e-9 ? -sigma * Math.log1p(-share) : (sigma * Math.expm1(-k * Math.log1p(-share))) / k;

/**
 * The generalised Pareto law of ascending excesses by the quick posterior mean of Zhang & Stephens (2009), its k drawn
 * towards 0.5 as by ten excesses (Vehtari et al. 2024, appendix).
 */
function generalisedPareto(excesses: readonly number[]): Law {
  const n = excesses.length;
  const grid = 30 + Math.floor(Math.sqrt(n));
  const quarter = excesses[Math.max(0, Math.floor(n / 4 + 0.5) - 1)];
  const shape = (theta: number) => excesses.reduce((sum, x) => sum + Math.log1p(-theta * x), 0) / n;
  const thetas = Array.from(
    { length: grid },
    (_, j) => 1 / excesses[n - 1] + (1 - Math.sqrt(grid / (j + 0.5))) / (3 * quarter),
  );
  const profile = thetas.map((theta) => {
    const k = shape(theta);
    return n * (Math.log(-theta / k) - k - 1);
  });
  const best = Math.max(...profile);
  const shares = profile.map((value) => Math.exp(value - best));
  const total = shares.reduce((sum, share) => sum + share, 0);
  const theta = thetas.reduce((sum, value, j) => sum + (value * shares[j]) / total, 0);
  const k = shape(theta);
  return { sigma: -k / theta, k: (k * n + 5) / (n + 10) };
}
