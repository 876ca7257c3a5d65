import { bounds, contains, labelPlace } from '../../../engine/geometry/polygon';
import type { Point, Ring } from '../../../engine/geometry/point';
import type { Box } from './labelPlaces';

const deepest = new WeakMap<Ring, Point>();

/** The place of a room with most space round it; kept by outline, since outlines never change in place. */
export function deepestPlace(outline: Ring): Point {
  const known = deepest.get(outline);
  if (known) return known;
  const at = labelPlace(outline);
  deepest.set(outline, at);
  return at;
}

const COLUMNS = 17;

/**
 * Boxes of a size that lie wholly inside a room, from the nearest to its deepest place outward. `toScreen` and
 * `toPlan` carry places between the plan and the sheet (pixels, y down).
 */
export function namePlaces(
  outline: Ring,
  width: number,
  height: number,
  toScreen: (p: Point) => readonly [number, number],
  toPlan: (x: number, y: number) => Point,
): Box[] {
  const box = bounds(outline.map(toScreen));
  const [cx, cy] = toScreen(deepestPlace(outline));
  const stepX = Math.max(6, (box.x1 - box.x0 - width) / COLUMNS);
  const stepY = Math.max(6, (box.y1 - box.y0 - height) / COLUMNS);
  const places: { box: Box; away: number }[] = [];
  for (let i = -COLUMNS; i <= COLUMNS; i++) {
    for (let j = -COLUMNS; j <= COLUMNS; j++) {
      const x = cx - width / 2 + i * stepX;
      const y = cy - height / 2 + j * stepY;
      if (x < box.x0 || y < box.y0 || x + width > box.x1 || y + height > box.y1) continue;
      const corners: Point[] = [
        toPlan(x, y),
        toPlan(x + width, y),
        toPlan(x + width, y + height),
        toPlan(x, y + height),
      ];
      if (!corners.every((corner) => contains(outline, corner))) continue;
      places.push({ box: { x, y, width, height }, away: Math.hypot(i * stepX, j * stepY) });
    }
  }
  return places.sort((a, b) => a.away - b.away).map((place) => place.box);
}
