import { floorOutline } from '../../engine/geometry/outline';
import { inOrder } from '../order';
import type { Ring } from '../../engine/geometry/point';
import type { Home, Id } from '../home';

/** The floor of a level, grounds included: outer rings and holes, even-odd; gaps under 0.5 m between rooms are floor. */
export function levelOutline(home: Home, level: Id): Ring[] {
  const outlines = inOrder(home.rooms)
    .filter((room) => room.level === level)
    .map(({ outline }) => outline);
  return outlines.length > 0 ? floorOutline(outlines) : [];
}
