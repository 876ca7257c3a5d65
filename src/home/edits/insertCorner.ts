import { tidy } from '../kinds/tidy';
import { cornersOf, renumber } from './renumber';
import type { Point, Ref } from '../home';
import type { Edit } from './edit';

/** Breaks a wall of a room or fixture in two by a new corner. */
export function insertCorner(ref: Ref, wall: number, at: Point): Edit {
  return {
    name: 'Add corner',
    apply(draft) {
      const corners = cornersOf(draft, ref);
      if (!corners.ok) return corners.problem;
      const { outline } = corners;
      if (!outline[wall]) return { kind: 'no-such-wall', path: corners.path, wall, walls: outline.length };
      const next = [...outline.slice(0, wall + 1), tidy(at), ...outline.slice(wall + 1)];
      const walls = (old: number) => (old < wall ? [old] : old > wall ? [old + 1] : [wall, wall + 1]);
      return renumber(draft, ref, next, walls) ?? undefined;
    },
  };
}
