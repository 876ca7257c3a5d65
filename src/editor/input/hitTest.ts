import { area } from '../../engine/geometry/polygon';
import type { Home, KindName, Point, Ref } from '../../home/home';
import type { PointerInput, View } from '../editor';
import { ANSWERS } from '../stages';
import { thingsShown } from '../things';

/** Small things lie over large ones: whoever aims at a reading on a bed in a room means the reading. */
const ORDER: readonly KindName[] = ['reading', 'source', 'opening', 'piece', 'fixture', 'walk', 'room'];

/** How far from a thing it still answers, CSS pixels: a finger covers what it aims at. */
export const hitReach = (type: PointerInput['type']) => (type === 'touch' ? 22 : 6);

/** How far snapping pulls, CSS pixels. */
export const snapReach = (type: PointerInput['type']) => (type === 'touch' ? 14 : 8);

/** The thing meant by a point: the nearest within reach of the first kind that has one; the smallest of those over it. */
export function hitTest(
  home: Home,
  view: View,
  at: Point,
  reach: number,
  kinds: readonly KindName[] = ANSWERS[view.stage],
): Ref | null {
  for (const name of ORDER) {
    if (!kinds.includes(name)) continue;
    let best: { ref: Ref; distance: number; size: number } | null = null;
    for (const { ref, thing, kind } of thingsShown(home, view, [name])) {
      const distance = kind.distanceTo(home, thing, at);
      if (distance > reach || (best && distance > best.distance)) continue;
      const shape = kind.shape(home, thing);
      const size = shape.closed ? area(shape.points) : 0;
      if (!best || distance < best.distance || size < best.size) best = { ref, distance, size };
    }
    if (best) return best.ref;
  }
  return null;
}

/** All things that lie wholly inside a rectangle given by two opposite corners. */
export function thingsWithin(home: Home, view: View, a: Point, b: Point): Ref[] {
  const [x0, x1] = [Math.min(a[0], b[0]), Math.max(a[0], b[0])];
  const [y0, y1] = [Math.min(a[1], b[1]), Math.max(a[1], b[1])];
  const inside = ([x, y]: Point) => x >= x0 && x <= x1 && y >= y0 && y <= y1;
  const found: Ref[] = [];
  for (const { ref, thing, kind } of thingsShown(home, view, ANSWERS[view.stage])) {
    if (kind.shape(home, thing).points.every(inside)) found.push(ref);
  }
  return found;
}
