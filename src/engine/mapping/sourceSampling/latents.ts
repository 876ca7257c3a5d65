/**
 * Every unknown of a source is made of standard normal latents, so that one step serves them all and a prior is written
 * once, as the function from normal to physical.
 */

/** Uniform in (0, 1) from a standard normal: its distribution function (Abramowitz & Stegun 1964, 26.2.17; within 8e-8). */
export function uniform(z: number): number {
  const t = 1 / (1 + 0.2316419 * Math.abs(z));
  const tail =
    0.3989422804014327 *
    Math.exp(-0.5 * z * z) *
    t *
    (0.31938153 + t * (-0.356563782 + t * (1.781477937 + t * (-1.821255978 + t * 1.330274429))));
  return z > 0 ? 1 - tail : tail;
}

/** Uniform between two bounds. */
export const between = (low: number, high: number, z: number): number => low + (high - low) * uniform(z);

/** Log-normal by its median and the standard deviation of its ln. */
export const logNormal = (median: number, sd: number, z: number): number => median * Math.exp(sd * z);

/** 1 ÷ the length of two latents, which as a direction are uniform round the circle; 0 where they have none. */
export function overLength(a: number, b: number, c = 0): number {
  const square = a * a + b * b + c * c;
  return square > 0 ? 1 / Math.sqrt(square) : 0;
}
