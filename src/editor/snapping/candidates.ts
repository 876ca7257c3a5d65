import type { Home, KindName, Point, Ref } from '../../home/home';
import type { View } from '../editor';
import { sameRef, thingsShown } from '../things';

/** What a moving thing may come to rest on. */
export interface SnapScene {
  points: readonly Point[];
  lines: readonly (readonly [Point, Point])[];
}

const SOLID: readonly KindName[] = ['room', 'fixture', 'piece', 'opening', 'source', 'walk'];

/** Corners and walls of the level, save those that move with the pointer. */
export function snapScene(home: Home, view: View, moving: readonly Ref[] = [], kinds = SOLID): SnapScene {
  const points: Point[] = [];
  const lines: (readonly [Point, Point])[] = [];
  for (const { ref, thing, kind } of thingsShown(home, view, kinds)) {
    if (moving.some((each) => sameRef(each, ref))) continue;
    const snaps = kind.snaps(home, thing);
    points.push(...snaps.points);
    lines.push(...snaps.lines);
  }
  return { points, lines };
}
