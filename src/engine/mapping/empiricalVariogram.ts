/** Pairs of values about as far apart: how many, how far on average, and half the mean square of their difference. */
export interface Lag {
  pairs: number;
  distance: number;
  semivariance: number;
}

/** A value at a place; only pairs of one `level` count, and `noise` is what the meter adds to the value's variance. */
export interface VariogramPoint {
  level: string;
  x: number;
  y: number;
  value: number;
  noise: number;
}

/**
 * The empirical variogram (Matheron 1963) in `lags` classes of equal width up to `cutoff` metres, upper ends included,
 * distances averaged within a class; classes without pairs are left out. What noise adds to a pair, the mean of the two
 * variances, is taken off, and a class never falls under 0: the lag speaks of the field.
 */
export function empiricalVariogram(points: readonly VariogramPoint[], cutoff: number, lags: number): Lag[] {
  const pairs = new Float64Array(lags);
  const distances = new Float64Array(lags);
  const semivariances = new Float64Array(lags);
  for (let i = 0; i < points.length; i++)
    for (let j = 0; j < i; j++) {
      const a = points[i];
      const b = points[j];
      if (a.level !== b.level) continue;
      const h = Math.sqrt((a.x - b.x) ** 2 + (a.y - b.y) ** 2);
      if (h === 0 || h > cutoff) continue;
      const lag = Math.min(lags, Math.ceil((h / cutoff) * lags)) - 1;
      pairs[lag]++;
      distances[lag] += h;
      semivariances[lag] += ((a.value - b.value) ** 2 - a.noise - b.noise) / 2;
    }
  return Array.from(pairs, (count, lag) => ({
    pairs: count,
    distance: distances[lag] / count,
    semivariance: Math.max(0, semivariances[lag] / count),
  })).filter((lag) => lag.pairs > 0);
}
