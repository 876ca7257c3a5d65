import { add, sub, type Point, type Ring } from '../../engine/geometry/point';
import { contains } from '../../engine/geometry/polygon';
import { closestOnSegment } from '../../engine/geometry/segment';
import { wallsOf } from '../kinds/outlined';

/** Metres by which a corner may lie in a wall: places are kept to a tenth of a millimetre. */
const TOUCH = 2e-4;
/** A corner for each wall of a crooked room, and some more. */
const STEPS = 12;

/** From a place to the nearest one inside a room. */
function inward(room: Ring, at: Point): Point {
  if (contains(room, at)) return [0, 0];
  const feet = wallsOf(room).map(([a, b]) => closestOnSegment(at, a, b));
  return sub(feet.reduce((best, foot) => (foot.distance < best.distance ? foot : best)).at, at);
}

/** Whether every corner of an outline lies in a room, or no further in its walls than places are kept. */
export const liesInside = (outline: Ring, room: Ring): boolean =>
  outline.every((corner) => Math.hypot(...inward(room, corner)) <= TOUCH);

/** The least shift found that brings every corner of an outline into a room; null where sliding does not do it. */
export function slideInside(outline: Ring, room: Ring): Point | null {
  let shift: Point = [0, 0];
  for (let step = 0; step < STEPS; step += 1) {
    const pushes = outline.map((corner) => inward(room, add(corner, shift)));
    const most = pushes.reduce((a, b) => (Math.hypot(...b) > Math.hypot(...a) ? b : a));
    if (Math.hypot(...most) <= TOUCH) return shift;
    shift = add(shift, most);
  }
  return null;
}
