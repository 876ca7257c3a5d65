/** How two ways of measuring the same agree, in their unit. */
export interface Agreement {
  /** Mean of first less second. */
  bias: number;
  deviation: number;
  /** bias ± 2 deviations hold about 95 % of the differences. */
  low: number;
  high: number;
}

/** Limits of agreement of pairs (Bland & Altman 1986, with their factor of 2). Needs two pairs; throws without. */
export function agreement(pairs: readonly (readonly [number, number])[]): Agreement {
  if (pairs.length < 2) throw new Error('Agreement needs two pairs.');
  const differences = pairs.map(([first, second]) => first - second);
  const bias = differences.reduce((sum, difference) => sum + difference, 0) / pairs.length;
  const deviation = Math.sqrt(
    differences.reduce((sum, difference) => sum + (difference - bias) ** 2, 0) / (pairs.length - 1),
  );
  return { bias, deviation, low: bias - 2 * deviation, high: bias + 2 * deviation };
}

/**
 * Standard deviation of the difference of one meter's two looks at the same: the mean difference is taken to be 0, for
 * nothing has changed (Bland & Altman 1986).
 */
export const repeatability = (pairs: readonly (readonly [number, number])[]): number =>
  Math.sqrt(pairs.reduce((sum, [first, second]) => sum + (first - second) ** 2, 0) / pairs.length);
