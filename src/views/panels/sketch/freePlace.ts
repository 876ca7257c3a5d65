import type { Home, Id, Point } from '../../../home/home';

/** The lower left corner for a room that is typed, not drawn: right of what stands on the level, at its foot. */
export function freePlace(home: Home, level: Id): Point {
  const corners = Object.values(home.rooms)
    .filter((room) => room.level === level && room.use !== 'grounds')
    .flatMap((room) => room.outline);
  if (corners.length === 0) return [0, 0];
  return [Math.max(...corners.map(([x]) => x)), Math.min(...corners.map(([, y]) => y))];
}
