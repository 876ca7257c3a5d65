import { area, bounds, contains, insideDistance, labelPlace } from '../geometry/polygon';
import type { AssessRoom } from '../assess';
import type { NextRequest } from './request';
import type { Place } from '../mapping/observations';
import type { Point } from '../geometry/point';

/** Metres: off a wall, where wiring makes a field of its own, and off what has been read. */
const OFF_WALL = 0.3;
const OFF_READING = 0.3;

/** Metres between places that are tried. Fields change slowly out of doors. */
const STEP = 0.45;
const STEP_OUTDOORS = 1.5;

/** Places tried on a level: their covariances are the work. */
const MOST = 400;

/**
 * Places of a level where somebody can stand and read at this height: a lattice of each room, laid to its own walls, 0.3 m off
 * walls and places already read, not in a fixture; to the centimetre. A room too narrow for that is read where it is widest.
 */
export function spotsOn(
  { rooms, fixtures, fitted, height }: Pick<NextRequest, 'rooms' | 'fixtures' | 'fitted' | 'height'>,
  level: string,
): Point[] {
  const own = rooms.filter((room) => room.level === level);
  const solid = fixtures.filter((fixture) => fixture.level === level);
  const coarser = Math.max(
    1,
    Math.sqrt(own.reduce((sum, room) => sum + area(room.outline) / stepOf(room) ** 2, 0) / MOST),
  );
  const free = (p: Point) =>
    !solid.some(({ outline }) => contains(outline, p)) &&
    !fitted.places.some((place) => isRead(place, level, height, p));
  return own.flatMap((room) => {
    const spots = lattice(room, stepOf(room) * coarser);
    return (spots.length > 0 ? spots : [toCentimetres(labelPlace(room.outline))]).filter(free);
  });
}

const stepOf = ({ use }: AssessRoom): number => (use === 'grounds' ? STEP_OUTDOORS : STEP);

function lattice({ outline, without }: AssessRoom, step: number): Point[] {
  const { x0, x1, y0, y1 } = bounds(outline);
  return between(x0, x1, step)
    .flatMap((x) => between(y0, y1, step).map((y) => toCentimetres([x, y])))
    .filter(
      (p) =>
        insideDistance(outline, p) > OFF_WALL - 0.01 &&
        !without.some((ring) => insideDistance(ring, p) > -OFF_WALL),
    );
}

/** Places between two walls, the outermost at their distance from them, about a step apart. */
function between(from: number, to: number, step: number): number[] {
  const open = to - from - 2 * OFF_WALL;
  const steps = Math.floor(open / step);
  return steps < 1
    ? [(from + to) / 2]
    : Array.from({ length: steps + 1 }, (_, i) => from + OFF_WALL + (i * open) / steps);
}

const toCentimetres = ([x, y]: Point): Point => [Math.round(x * 100) / 100, Math.round(y * 100) / 100];

const isRead = (place: Place, level: string, height: number, [x, y]: Point): boolean =>
  place.level === level && Math.hypot(place.x - x, place.y - y, place.height - height) < OFF_READING;
