import { bounds, contains } from './geometry/polygon';
import { REACH } from './mapping/support';
import type { AssessRequest } from './assess';
import type { Point } from './geometry/point';

// Fields change slowly out of doors, so a reading speaks for more of the grounds than of a room: the project's choice.
const GROUNDS_REACH = 10;

/** How far a reading reaches at places of a level, metres: further on grounds than indoors. */
export function reachOn({ rooms }: Pick<AssessRequest, 'rooms'>, level: string): (p: Point) => number {
  const own = rooms
    .filter((room) => room.level === level)
    .map((room) => ({ ...room, box: bounds(room.outline) }));
  const grounds = own.filter(({ use }) => use === 'grounds');
  const indoors = own.filter(({ use }) => use !== 'grounds');
  const holds =
    ([x, y]: Point) =>
    ({ box, outline }: (typeof own)[number]) =>
      x >= box.x0 && x <= box.x1 && y >= box.y0 && y <= box.y1 && contains(outline, [x, y]);
  return (p) => (grounds.some(holds(p)) && !indoors.some(holds(p)) ? GROUNDS_REACH : REACH);
}
