import { bounds, contains, labelPlace } from '../../../engine/geometry/polygon';
import type { Point, Ring } from '../../../engine/geometry/point';
import type { Box } from './labelPlaces';

const deepest = new WeakMap<Ring, Point>();

/** The place of a room with most space round it; kept by outline, since outlines never change in place. */
function deepestPlace(outline: Ring): Point {
  const known = deepest.get(outline);
  if (known) return known;
  const at = labelPlace(outline);
  deepest.set(outline, at);
  return at;
}

const REACH = 17;

/** Steps away from the middle, nearest first. */
const LATTICE = Array.from({ length: (2 * REACH + 1) ** 2 }, (_, k): [number, number] => [
  (k % (2 * REACH + 1)) - REACH,
  Math.floor(k / (2 * REACH + 1)) - REACH,
]).sort(([a, b], [c, d]) => a * a + b * b - c * c - d * d);

/**
 * Boxes of a size that lie wholly inside a room, from its deepest place outward, worked out only as far as they are
 * asked for. `toScreen` and `toPlan` carry places between the plan and the sheet (pixels, y down).
 */
export function* namePlaces(
  outline: Ring,
  width: number,
  height: number,
  toScreen: (p: Point) => readonly [number, number],
  toPlan: (x: number, y: number) => Point,
): Generator<Box> {
  const box = bounds(outline.map(toScreen));
  const [cx, cy] = toScreen(deepestPlace(outline));
  const stepX = Math.max(6, (box.x1 - box.x0 - width) / REACH);
  const stepY = Math.max(6, (box.y1 - box.y0 - height) / REACH);
  for (const [i, j] of LATTICE) {
    const x = cx - width / 2 + i * stepX;
    const y = cy - height / 2 + j * stepY;
    if (x < box.x0 || y < box.y0 || x + width > box.x1 || y + height > box.y1) continue;
    const isInside =
      contains(outline, toPlan(x, y)) &&
      contains(outline, toPlan(x + width, y)) &&
      contains(outline, toPlan(x + width, y + height)) &&
      contains(outline, toPlan(x, y + height));
    if (isInside) yield { x, y, width, height };
  }
}
