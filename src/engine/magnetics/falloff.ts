/** B = scale · r^(−exponent). */
export interface Falloff {
  exponent: number;
  /** Standard error of the exponent; 0 for two values. */
  standardError: number;
  /** The field at 1 m, in the unit of the values. */
  scale: number;
}

/**
 * How fast values fall with distance: least squares of ln B on ln r. Distances in metres, values in any one unit, all
 * positive. Null where fewer than two distances differ. Exponent 1 is a net current, 2 a balanced line, 3 a transformer or
 * an appliance from some way off.
 */
export function fitFalloff(distances: readonly number[], values: readonly number[]): Falloff | null {
  const n = distances.length;
  const x = distances.map(Math.log);
  const y = values.map(Math.log);
  const mean = (of: number[]) => of.reduce((sum, v) => sum + v, 0) / n;
  const [mx, my] = [mean(x), mean(y)];
  const sxx = x.reduce((sum, v) => sum + (v - mx) ** 2, 0);
  if (n < 2 || sxx < 1e-12) return null;
  const slope = x.reduce((sum, v, i) => sum + (v - mx) * (y[i] - my), 0) / sxx;
  const left = y.reduce((sum, v, i) => sum + (v - my - slope * (x[i] - mx)) ** 2, 0);
  return {
    exponent: 0 - slope,
    standardError: n > 2 ? Math.sqrt(left / (n - 2) / sxx) : 0,
    scale: Math.exp(my - slope * mx),
  };
}
