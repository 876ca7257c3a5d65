import { normalShare } from '../../algebra/normalShare';

/**
 * Every unknown of a source is made of standard normal latents, so that one step serves them all and a prior is written
 * once, as the function from normal to physical.
 */

/** Uniform in (0, 1) from a standard normal. */
export const uniform = normalShare;

/** Uniform between two bounds. */
export const between = (low: number, high: number, z: number): number => low + (high - low) * uniform(z);

/** Log-normal by its median and the standard deviation of its ln. */
export const logNormal = (median: number, sd: number, z: number): number => median * Math.exp(sd * z);

/** 1 ÷ the length of two latents, which as a direction are uniform round the circle; 0 where they have none. */
export function overLength(a: number, b: number, c = 0): number {
  const square = a * a + b * b + c * c;
  return square > 0 ? 1 / Math.sqrt(square) : 0;
}
