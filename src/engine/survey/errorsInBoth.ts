import type { Line } from './line';

/** One point with the standard uncertainty of each coordinate, in its unit. */
export interface UncertainPoint {
  x: number;
  y: number;
  xUncertainty: number;
  yUncertainty: number;
}

const ROUNDS = 200;

/**
 * The line through points uncertain in both coordinates, as two meters held side by side give them: York 1966, in the form
 * of York, Evensen, Martinez & Delgado 2004 (eq. 13), errors of x and y independent. `misfit` is the weighted sum of squared
 * residuals, about points − 2 where the uncertainties are right. Needs two different x; throws without.
 */
export function errorsInBoth(points: readonly UncertainPoint[]): Line & { misfit: number } {
  let slope = startingSlope(points);
  for (let round = 0; round < ROUNDS; round++) {
    const next = improved(points, slope).slope;
    const settled = Math.abs(next - slope) <= 1e-15 * Math.abs(next);
    slope = next;
    if (settled) break;
  }
  const { intercept, weights, adjusted, total } = improved(points, slope);
  const xMean = sum(weights, (weight, i) => weight * adjusted[i]) / total;
  const spread = sum(weights, (weight, i) => weight * (adjusted[i] - xMean) ** 2);
  const slopeVariance = 1 / spread;
  const interceptVariance = 1 / total + xMean ** 2 * slopeVariance;
  return {
    intercept,
    slope,
    interceptUncertainty: Math.sqrt(interceptVariance),
    slopeUncertainty: Math.sqrt(slopeVariance),
    correlation: (-xMean * slopeVariance) / Math.sqrt(interceptVariance * slopeVariance),
    misfit: sum(weights, (weight, i) => weight * (points[i].y - intercept - slope * points[i].x) ** 2),
  };
}

/** One round: weights by the slope so far, a better slope, and where each point would lie on the line. */
function improved(points: readonly UncertainPoint[], slope: number) {
  const weights = points.map(
    ({ xUncertainty, yUncertainty }) => 1 / (yUncertainty ** 2 + (slope * xUncertainty) ** 2),
  );
  const total = sum(weights, (weight) => weight);
  const x = sum(weights, (weight, i) => weight * points[i].x) / total;
  const y = sum(weights, (weight, i) => weight * points[i].y) / total;
  const offsets = points.map((point, i) => {
    const [u, v] = [point.x - x, point.y - y];
    return weights[i] * (u * point.yUncertainty ** 2 + slope * v * point.xUncertainty ** 2);
  });
  const better =
    sum(offsets, (offset, i) => weights[i] * offset * (points[i].y - y)) /
    sum(offsets, (offset, i) => weights[i] * offset * (points[i].x - x));
  return {
    slope: better,
    intercept: y - better * x,
    weights,
    total,
    adjusted: offsets.map((offset) => x + offset),
  };
}

function startingSlope(points: readonly UncertainPoint[]): number {
  const [x, y] = [sum(points, (point) => point.x), sum(points, (point) => point.y)].map(
    (s) => s / points.length,
  );
  const xx = sum(points, (point) => (point.x - x) ** 2);
  if (!(xx > 0)) throw new Error('A line needs two different x.');
  return sum(points, (point) => (point.x - x) * (point.y - y)) / xx;
}

const sum = <Item>(items: readonly Item[], of: (item: Item, i: number) => number): number =>
  items.reduce((total, item, i) => total + of(item, i), 0);
