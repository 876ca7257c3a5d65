import { minimiseBetween } from '../algebra/minimise';

/** Values at places in three dimensions: a reading lower down is further off. */
export interface SpacePoint {
  x: number;
  y: number;
  height: number;
}

/**
 * Weights of the places at a target, into `weights`, sum 1: 1/dᵖ (Shepard 1968); a place at the target takes all, several
 * share.
 */
export function inverseDistanceWeights(
  places: readonly SpacePoint[],
  target: SpacePoint,
  power: number,
  weights: Float64Array,
): void {
  let [total, touching] = [0, 0];
  for (let i = 0; i < places.length; i++) {
    const square = squaredDistance(places[i], target);
    if (square === 0) touching++;
    weights[i] = square === 0 ? Infinity : square ** (-power / 2);
    total += weights[i];
  }
  for (let i = 0; i < places.length; i++)
    weights[i] = touching > 0 ? (weights[i] === Infinity ? 1 / touching : 0) : weights[i] / total;
}

export const squaredDistance = (a: SpacePoint, b: SpacePoint): number =>
  (a.x - b.x) ** 2 + (a.y - b.y) ** 2 + (a.height - b.height) ** 2;

/** The power between 0.5 and 6 whose leave-one-out error, given by `error`, is least; 2 where all are alike. */
export function bestPower(error: (power: number) => number): number {
  const powers = Array.from({ length: 12 }, (_, i) => 0.5 + i / 2);
  const errors = powers.map(error);
  const least = Math.min(...errors);
  if (!(Math.max(...errors) > least)) return 2;
  const at = powers[errors.indexOf(least)];
  return minimiseBetween(error, Math.max(0.5, at - 0.5), Math.min(6, at + 0.5), 1e-3).at;
}
