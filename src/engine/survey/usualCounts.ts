/** A count is a surprise where so few or so many would come about by luck less often than this. */
const TAIL = 0.05;

/**
 * The counts out of n, each a success with probability p (0 < p < 1), that are no surprise: from the fewest to the most that
 * neither tail of the binomial law puts under 5 % (the exact test of Clopper & Pearson 1934, Biometrika 26:404).
 */
export function usualCounts(n: number, p: number): { fewest: number; most: number } {
  const law = binomial(n, p);
  let [fewest, most] = [0, n];
  for (let below = law[0]; below < TAIL; below += law[fewest]) fewest++;
  for (let above = law[n]; above < TAIL; above += law[most]) most--;
  return { fewest, most };
}

/** Probability of each count 0…n, from the likeliest outward: a power of n would be nothing in floating point. */
function binomial(n: number, p: number): Float64Array {
  const law = new Float64Array(n + 1);
  const top = Math.min(n, Math.floor((n + 1) * p));
  law[top] = 1;
  for (let k = top; k < n; k++) law[k + 1] = (law[k] * ((n - k) * p)) / ((k + 1) * (1 - p));
  for (let k = top; k > 0; k--) law[k - 1] = (law[k] * (k * (1 - p))) / ((n - k + 1) * p);
  const total = law.reduce((sum, value) => sum + value, 0);
  return law.map((value) => value / total);
}
