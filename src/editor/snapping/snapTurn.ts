import { add, distance, sub } from '../../engine/geometry/point';
import type { Point } from '../../home/home';
import type { SnapScene } from './candidates';

/** Degrees between the positions a turning thing comes to rest in. */
const NOTCH = 15;
/** Right angles pull from this far, and so do walls: most furniture stands square to something. */
const SQUARE_PULL = 7;

const degreesOf = ([x, y]: Point) => (Math.atan2(y, x) * 180) / Math.PI;

/** Between −180 and 180. */
const turned = (from: number, to: number) => ((((to - from) % 360) + 540) % 360) - 180;

export function middleOf(points: readonly Point[]): Point {
  const xs = points.map((p) => p[0]);
  const ys = points.map((p) => p[1]);
  return [(Math.min(...xs) + Math.max(...xs)) / 2, (Math.min(...ys) + Math.max(...ys)) / 2];
}

/** Where the turning handle comes to rest: square to the page or to a wall, else in steps of 15°. */
export function snapTurn(scene: SnapScene, middle: Point, at: Point, pull: number): Point {
  if (pull <= 0) return at;
  const wished = degreesOf(sub(at, middle));
  const squares = [0, 90, 180, 270];
  for (const [a, b] of scene.lines) {
    const wall = degreesOf(sub(b, a));
    squares.push(wall, wall + 90, wall + 180, wall + 270);
  }
  let angle = Math.round(wished / NOTCH) * NOTCH;
  let least = SQUARE_PULL;
  for (const each of squares) {
    const off = Math.abs(turned(wished, each));
    if (off < least) [angle, least] = [each, off];
  }
  const radians = (angle * Math.PI) / 180;
  const far = distance(middle, at);
  return add(middle, [far * Math.cos(radians), far * Math.sin(radians)]);
}
