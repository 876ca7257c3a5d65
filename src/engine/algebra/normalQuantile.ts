/**
 * z with a standard normal below it with probability p, 0 < p < 1, to within 4.5e-4 (Abramowitz & Stegun 1964, 26.2.23,
 * after Hastings 1955).
 */
export function normalQuantile(p: number): number {
  const t = Math.sqrt(-2 * Math.log(Math.min(p, 1 - p)));
  const z =
    t - (2.515517 + t * (0.802853 + t * 0.010328)) / (1 + t * (1.432788 + t * (0.189269 + t * 0.001308)));
  return p < 0.5 ? -z : z;
}
