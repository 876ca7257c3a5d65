import { bounds } from '../../engine/geometry/polygon';
import { addRoom } from './add';
import type { Home, Id, Point } from '../home';
import type { Edit } from './edit';

/** Ground kept free around the outermost reading, metres. */
const MARGIN = 2;

/** Draws grounds around everything that was read and drawn on a level: for readings taken before, or outside, any room. */
export function drawGrounds(level: Id): Edit {
  return {
    name: 'Draw grounds',
    apply(draft) {
      const { x0, y0, x1, y1 } = bounds(placesOn(draft, level));
      if (!(x1 >= x0)) return { kind: 'nothing-to-surround' };
      const [left, right] = [Math.floor(x0 - MARGIN), Math.ceil(x1 + MARGIN)];
      const [lower, upper] = [Math.floor(y0 - MARGIN), Math.ceil(y1 + MARGIN)];
      const outline: Point[] = [
        [left, lower],
        [right, lower],
        [right, upper],
        [left, upper],
      ];
      return addRoom({ level, name: 'Grounds', use: 'grounds', outline }).apply(draft);
    },
  };
}

function placesOn(home: Home, level: Id): Point[] {
  const here = <T extends { level: Id }>(record: Record<Id, T>) =>
    Object.values(record).filter((each) => each.level === level);
  return [...here(home.readings).map(({ at }) => at), ...here(home.rooms).flatMap(({ outline }) => outline)];
}
