import type { Data } from './covarianceMatrix';
import type { Place } from './observations';

/** Standard deviation of ln B per metre of height between a reading and what is asked: the project's choice. */
const HEIGHT_LN_SD = 0.6;

/** What the places of one level say about the field at one height: the further off in height, the less surely. */
export interface Plane extends Data {
  places: readonly Place[];
  height: number;
}

/** The places of a level as data for kriging at a height, metres above its floor: ln B in µT, noise as variance of ln B. */
export function planeOf(places: readonly Place[], level: string, height: number): Plane {
  const own = places.filter((place) => place.level === level);
  return {
    places: own,
    height,
    xs: own.map(({ x }) => x),
    ys: own.map(({ y }) => y),
    values: own.map(({ ln }) => ln),
    noise: own.map((place) => place.variance + heightVariance(place.height, height)),
  };
}

/** Variance of ln B that a difference in height stands for. */
export const heightVariance = (a: number, b: number): number => (HEIGHT_LN_SD * (a - b)) ** 2;
