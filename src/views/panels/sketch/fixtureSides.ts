import { signedArea } from '../../../engine/geometry/polygon';
import { distance, dot, sub } from '../../../engine/geometry/point';
import { closestOnSegment } from '../../../engine/geometry/segment';
import type { Fixture, Home, Point } from '../../../home/home';
import { wallOf, wallsOf } from '../../../home/kinds/outlined';
import { wallLength, withWallLength } from './wallLength';

type Outline = readonly Point[];

/** Four corners at right angles, so that a width and a depth say all. */
export function isRectangle(outline: Outline): boolean {
  if (outline.length !== 4) return false;
  return wallsOf(outline).every(([a, b], i) => {
    const [, c] = wallOf(outline, (i + 1) % 4);
    return Math.abs(dot(sub(b, a), sub(c, b))) < 1e-3 * distance(a, b) * distance(b, c);
  });
}

/** The side that looks into the room: as the person said, else that of the two long ones further from a wall. */
export function frontSide(home: Home, { level, outline, front }: Fixture): number {
  if (front !== null) return front;
  const walls = Object.values(home.rooms)
    .filter((room) => room.level === level && room.use !== 'grounds')
    .flatMap((room) => wallsOf(room.outline));
  const long = wallLength(outline, 0) >= wallLength(outline, 1) ? [0, 2] : [1, 3];
  const away = (side: number) => {
    const [a, b] = wallOf(outline, side);
    const middle: Point = [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
    return Math.min(...walls.map(([from, to]) => closestOnSegment(middle, from, to).distance));
  };
  return away(long[1]!) > away(long[0]!) ? long[1]! : long[0]!;
}

/** The outline with another depth; the side at its back stays where it is. */
export const withDepth = (outline: Outline, front: number, depth: number): Point[] =>
  withWallLength(outline, (front + 3) % 4, depth);

export type Way = 'right' | 'up' | 'left' | 'down';

/** Which way on the page a side looks. */
export function sideWay(outline: Outline, side: number): Way {
  const [a, b] = wallOf(outline, side);
  const turn = signedArea(outline) > 0 ? 1 : -1;
  const [x, y] = [turn * (b[1] - a[1]), -turn * (b[0] - a[0])];
  if (Math.abs(x) > Math.abs(y)) return x > 0 ? 'right' : 'left';
  return y > 0 ? 'up' : 'down';
}
