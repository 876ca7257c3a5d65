import { cornersOf, renumber } from './renumber';
import type { Ref } from '../home';
import type { Edit } from './edit';

/** Makes one wall of the two that meet in a corner of a room or fixture. */
export function removeCorner(ref: Ref, corner: number): Edit {
  return {
    name: 'Remove corner',
    apply(draft) {
      const corners = cornersOf(draft, ref);
      if (!corners.ok) return corners.problem;
      const { outline, path } = corners;
      if (!outline[corner]) return { kind: 'no-such-corner', path, corner };
      if (outline.length === 3) return { kind: 'outline-short', path, corners: 2, least: 3 };
      const next = outline.filter((_, i) => i !== corner);
      // The walls before and behind the corner become one; without corner 0 it is the last.
      const walls = (old: number) => [(old < corner ? old : old - 1 + next.length) % next.length];
      return renumber(draft, ref, next, walls) ?? undefined;
    },
  };
}
