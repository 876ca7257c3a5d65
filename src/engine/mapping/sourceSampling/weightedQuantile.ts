/** The least value that this share of the weight, 0…1, does not pass; NaN of none. */
export function weightedQuantile(
  values: readonly number[],
  weights: readonly number[],
  share: number,
): number {
  const order = values.map((_, i) => i).sort((a, b) => values[a] - values[b]);
  const sum = weights.reduce((total, weight) => total + weight, 0);
  let before = 0;
  for (const i of order) {
    before += weights[i];
    if (before >= share * sum * (1 - 1e-12)) return values[i];
  }
  return NaN;
}
