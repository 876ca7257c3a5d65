import type { Line } from './line';

/**
 * The line of least squared residuals in y, all points alike, x taken as exact (JCGM 100:2008, H.3.2). Needs three points
 * and two different x; throws without.
 */
export function leastSquaresLine(
  x: readonly number[],
  y: readonly number[],
): Line & { residualDeviation: number } {
  const n = x.length;
  const [xMean, yMean] = [mean(x), mean(y)];
  let [xx, xy] = [0, 0];
  for (let i = 0; i < n; i++) {
    xx += (x[i] - xMean) ** 2;
    xy += (x[i] - xMean) * (y[i] - yMean);
  }
  if (n < 3 || xx === 0) throw new Error('A line needs three points with two different x.');
  const slope = xy / xx;
  const intercept = yMean - slope * xMean;
  let squares = 0;
  for (let i = 0; i < n; i++) squares += (y[i] - intercept - slope * x[i]) ** 2;
  const residualDeviation = Math.sqrt(squares / (n - 2));
  const meanSquare = xx / n + xMean * xMean;
  return {
    intercept,
    slope,
    interceptUncertainty: residualDeviation * Math.sqrt(meanSquare / xx),
    slopeUncertainty: residualDeviation / Math.sqrt(xx),
    correlation: -xMean / Math.sqrt(meanSquare),
    residualDeviation,
  };
}

function mean(numbers: readonly number[]): number {
  return numbers.reduce((sum, number) => sum + number, 0) / numbers.length;
}
