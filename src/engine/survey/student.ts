/**
 * The value that Student's t with `degrees` (a whole number, at least 1) stays under with probability `p`, to 1e-10.
 * Throws on degrees under 1.
 */
export function studentQuantile(p: number, degrees: number): number {
  if (!(degrees >= 1)) throw new Error(`Student's t has at least 1 degree of freedom, not ${degrees}.`);
  if (p < 0.5) return -studentQuantile(1 - p, degrees);
  let [low, high] = [0, 1];
  while (below(high, degrees) < p) [low, high] = [high, 2 * high];
  while (high - low > 1e-12 * high) {
    const middle = (low + high) / 2;
    if (below(middle, degrees) < p) low = middle;
    else high = middle;
  }
  return high;
}

/** Probability of a value under t, in the finite sums of Abramowitz & Stegun 1964, 26.7.3 and 26.7.4. */
function below(t: number, degrees: number): number {
  const angle = Math.atan(t / Math.sqrt(degrees));
  const cosine2 = Math.cos(angle) ** 2;
  const odd = degrees % 2 === 1;
  let term = odd ? Math.cos(angle) : 1;
  let sum = degrees > 1 ? term : 0;
  for (let k = odd ? 3 : 2; k < degrees; k += 2) {
    term *= ((k - 1) / k) * cosine2;
    sum += term;
  }
  const within = odd ? (2 / Math.PI) * (angle + Math.sin(angle) * sum) : Math.sin(angle) * sum;
  return (1 + within) / 2;
}
