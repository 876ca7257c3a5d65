import { floorOutline } from '../../engine/geometry/outline';
import type { Ring } from '../../engine/geometry/point';
import type { Home, Id } from '../../home/home';
import { inOrder } from '../../home/order';
import { insideTest } from './drawing/insideTest';
import { openingLines, openingPlace } from './drawing/openingLines';
import { fixtureLines } from './drawing/fixtureLines';
import type { Line } from './drawing/line';
import { INNER, wallArea, wallDepth, withWalls } from './drawing/wallArea';

/** What is built on one level, ready to be drawn: plan metres. */
export interface PlanGeometry {
  /** The floor that is drawn on, rooms and grounds, even-odd. */
  floor: Ring[];
  /** Even-odd. */
  walls: Ring[];
  isFloor(x: number, y: number): boolean;
  isWall(x: number, y: number): boolean;
  openings: Line[];
  fixtures: Line[];
  grounds: Ring[];
}

/** The geometry of a level's plan, from the rooms, openings and fixtures alone. */
export function planGeometry(home: Pick<Home, 'rooms' | 'openings' | 'fixtures'>, level: Id): PlanGeometry {
  const rooms = inOrder(home.rooms).filter((room) => room.level === level);
  const indoors = withWalls(rooms);
  const openings = inOrder(home.openings);
  const floor = floorOutline(rooms.map((room) => room.outline));
  const walls = wallArea(rooms, openings);
  return {
    floor,
    walls,
    isFloor: insideTest(floor),
    isWall: insideTest(walls),
    openings: openings.flatMap((opening) => {
      const room = indoors.find(({ id }) => id === opening.room);
      const place = room && openingPlace(opening, room);
      // Where rooms touch the wall between them has no depth of its own.
      return place
        ? openingLines(opening, place, Math.max(INNER, wallDepth(place, room, indoors).depth))
        : [];
    }),
    fixtures: inOrder(home.fixtures)
      .filter((fixture) => fixture.level === level)
      .flatMap(fixtureLines),
    grounds: rooms.filter((room) => room.use === 'grounds').map((room) => room.outline),
  };
}
