import { distance } from '../../engine/geometry/point';
import { contains } from '../../engine/geometry/polygon';
import { closestOnSegment } from '../../engine/geometry/segment';
import type { Home, Point, Room } from '../../home/home';
import { inOrder } from '../../home/order';
import type { View } from '../editor';

export interface WallPlace {
  room: Room;
  /** The wall runs from a to b. */
  wall: number;
  a: Point;
  b: Point;
  length: number;
  /** Metres from a to the foot of the pointer. */
  along: number;
  /** Metres from the pointer. */
  distance: number;
}

/** The wall of a level's rooms nearest to a point. Where two rooms share one, that of the room the point lies in. */
export function nearestWall(home: Home, view: View, at: Point, reach: number, only?: Room): WallPlace | null {
  let best: WallPlace | null = null;
  let bestRank = Infinity;
  for (const room of only ? [only] : inOrder(home.rooms)) {
    if (room.level !== view.level) continue;
    // Grounds have no walls, only ends; a wall between a garden and a house is the house's.
    const favour = room.use === 'grounds' ? 2e-3 : contains(room.outline, at) ? 0 : 1e-3;
    room.outline.forEach((a, wall) => {
      const b = room.outline[(wall + 1) % room.outline.length]!;
      const length = distance(a, b);
      const closest = closestOnSegment(at, a, b);
      const rank = closest.distance + favour;
      if (closest.distance > reach || rank >= bestRank) return;
      bestRank = rank;
      best = { room, wall, a, b, length, along: closest.t * length, distance: closest.distance };
    });
  }
  return best;
}
