import { inverseDistanceMean } from '../inverseDistance';
import { planeOf } from '../plane';
import { samePoint } from '../leaveOneOut';
import type { Ground } from './changesWithout';
import type { Place } from '../observations';

/** Inverse distance without each place: the mean of what is left, its weights made to sum to 1 again. */
export function inverseDistanceChanges(
  places: readonly Place[],
  power: number,
  ground: Ground,
): Float64Array[] {
  const { level, height, xs, ys } = ground;
  const plane = planeOf(places, level, height);
  const drop = Float64Array.from(plane.places, (place) => (place.height - height) ** 2);
  const mean = (drop: Float64Array) =>
    Float64Array.from(xs, (x, p) =>
      inverseDistanceMean({ x: plane.xs, y: plane.ys, drop }, plane.values, x, ys[p], power),
    );
  const whole = mean(drop);
  return places.map((place) => {
    const group = place.level === level ? samePoint(plane.places, plane.places.indexOf(place)) : [];
    if (group.length === 0 || group.length === plane.places.length) return new Float64Array(xs.length);
    // What is left out is infinitely far below.
    return mean(drop.map((d, j) => (group.includes(j) ? Infinity : d))).map((value, p) => value - whole[p]);
  });
}
