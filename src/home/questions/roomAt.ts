import { area, contains } from '../../engine/geometry/polygon';
import { inOrder } from '../order';
import type { Home, Id, Point, Room } from '../home';

/** The room a place lies in, or null. Rooms lie over grounds, and a smaller room over a larger one. */
export function roomAt(home: Home, level: Id, at: Point): Room | null {
  const here = inOrder(home.rooms).filter((room) => room.level === level && contains(room.outline, at));
  const depth = (room: Room) => (room.use === 'grounds' ? Infinity : area(room.outline));
  return here.reduce<Room | null>((top, room) => (top && depth(top) <= depth(room) ? top : room), null);
}
