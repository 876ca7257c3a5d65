/** y = intercept + slope × x, with standard uncertainties. */
export interface Line {
  intercept: number;
  slope: number;
  interceptUncertainty: number;
  slopeUncertainty: number;
  /** Between the errors of intercept and slope, −1 … 1. */
  correlation: number;
}

/** The line's height at x and its standard uncertainty (JCGM 100:2008, H.3.4). */
export function onLine(line: Line, x: number): { value: number; uncertainty: number } {
  const { intercept, slope, interceptUncertainty: a, slopeUncertainty: b, correlation } = line;
  return {
    value: intercept + slope * x,
    uncertainty: Math.sqrt(Math.max(0, a * a + b * b * x * x + 2 * correlation * a * b * x)),
  };
}
