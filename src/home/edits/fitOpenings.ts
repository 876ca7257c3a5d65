import { distance } from '../../engine/geometry/point';
import { memberProblems } from '../integrity';
import { wallOf } from '../kinds/outlined';
import { tidyLength } from '../kinds/tidy';
import type { Home, Id } from '../home';
import type { Problem } from '../problem';

/**
 * After a room's outline has changed: openings slide along their walls to stay on them. One that is now wider than its
 * wall refuses the change.
 */
export function fitOpenings(draft: Home, room: Id): Problem | null {
  const { outline } = draft.rooms[room]!;
  for (const opening of Object.values(draft.openings)) {
    if (opening.room !== room) continue;
    if (opening.wall < outline.length) {
      const free = distance(...wallOf(outline, opening.wall)) - opening.width;
      if (opening.offset > free) opening.offset = Math.max(0, tidyLength(free));
    }
    const problem = memberProblems(draft, 'openings', opening.id)[0];
    if (problem) return problem;
  }
  return null;
}
