import { leastSquaresLine } from '../survey/leastSquaresLine';

/** B = scale · r^(−exponent). */
export interface Falloff {
  exponent: number;
  standardError: number;
  /** The field at 1 m, in the unit of the values. */
  scale: number;
}

/**
 * How fast values fall with distance: least squares of ln B on ln r. Distances in metres, values in any one unit, all
 * positive. Null with fewer than three, whose line says nothing of its error, or where no two distances differ. Exponent 1
 * is a net current, 2 a balanced line, 3 a transformer or an appliance from some way off.
 */
export function fitFalloff(distances: readonly number[], values: readonly number[]): Falloff | null {
  if (distances.length < 3 || distances.every((r) => r === distances[0])) return null;
  const { slope, slopeUncertainty, intercept } = leastSquaresLine(
    distances.map(Math.log),
    values.map(Math.log),
  );
  return { exponent: 0 - slope, standardError: slopeUncertainty, scale: Math.exp(intercept) };
}
