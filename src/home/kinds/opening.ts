import { add, distance, dot, lerp, scale, sub } from '../../engine/geometry/point';
import { closestOnSegment } from '../../engine/geometry/segment';
import { tidyLength } from './tidy';
import { wallOf, wallsOf } from './outlined';
import type { Home, Opening, Point } from '../home';
import type { Kind } from './kind';

/** The narrowest that a handle can make an opening, metres. */
const NARROWEST = 0.1;

const outlineOf = (home: Home, opening: Opening): readonly Point[] => home.rooms[opening.room]!.outline;

/** Where an opening begins and ends on its wall. */
export function openingEnds(home: Home, { room, wall, offset, width }: Opening): [Point, Point] {
  const [a, b] = wallOf(home.rooms[room]!.outline, wall);
  const long = distance(a, b);
  return [lerp(a, b, offset / long), lerp(a, b, (offset + width) / long)];
}

/** The opening in the wall nearest to where its middle should be, of those of its room that are long enough. */
function inNearestWall(home: Home, opening: Opening, middle: Point): Opening {
  let best = opening;
  let nearest = Infinity;
  const walls = wallsOf(outlineOf(home, opening)).map((ends, wall) => ({ ends, wall }));
  // Its own wall comes first, so that of two as near it stays where it is.
  walls.sort((x, y) => Number(y.wall === opening.wall) - Number(x.wall === opening.wall));
  for (const { ends, wall } of walls) {
    const long = distance(...ends);
    const near = closestOnSegment(middle, ...ends);
    if (long < opening.width || near.distance > nearest - 1e-6) continue;
    nearest = near.distance;
    const offset = Math.min(long - opening.width, Math.max(0, near.t * long - opening.width / 2));
    best = { ...opening, wall, offset: tidyDown(offset, long - opening.width) };
  }
  return best;
}

/** Rounding must not push the far end past the corner. */
const tidyDown = (offset: number, most: number): number => Math.min(tidyLength(offset), Math.max(0, most));

export const opening: Kind<Opening> = {
  kind: 'opening',
  collection: 'openings',
  level: (home, { room }) => home.rooms[room]!.level,
  shape: (home, thing) => ({ points: openingEnds(home, thing), closed: false }),
  distanceTo: (home, thing, at) => closestOnSegment(at, ...openingEnds(home, thing)).distance,
  handles: (home, thing) =>
    openingEnds(home, thing).map((at, i) => ({ key: i === 0 ? 'start' : 'end', at, role: 'end' })),
  drag: (home, thing, delta) => {
    const [start, end] = openingEnds(home, thing);
    return inNearestWall(home, thing, add(scale(add(start, end), 0.5), delta));
  },
  dragHandle: (home, thing, key, to) => {
    const [a, b] = wallOf(outlineOf(home, thing), thing.wall);
    const long = distance(a, b);
    const along = Math.min(long, Math.max(0, dot(sub(to, a), sub(b, a)) / long));
    const [start, end] = [thing.offset, thing.offset + thing.width];
    // One that is narrower already may stay so.
    const narrowest = Math.min(NARROWEST, thing.width);
    if (key === 'start') {
      const offset = tidyLength(Math.min(along, Math.max(0, end - narrowest)));
      return { ...thing, offset, width: tidyLength(end - offset) };
    }
    return { ...thing, width: tidyDown(Math.max(narrowest, along - start), long - start) };
  },
  snaps: (home, thing) => ({ points: openingEnds(home, thing), lines: [] }),
  // An opening is turned with its room.
  turn: (_home, thing) => thing,
  follows: () => [],
};
