import { bounds, type Bounds } from '../../engine/geometry/polygon';
import { rectangle } from '../../engine/geometry/pose';
import { floorOutline, grown } from '../../engine/geometry/outline';
import type { Point, Ring } from '../../engine/geometry/point';
import { closestOnSegment } from '../../engine/geometry/segment';
import { toScreen } from '../../editor/camera';
import type { Camera } from '../../editor/editor';
import type { Home, Id, Reading, Room, Source } from '../../home/home';
import { inOrder } from '../../home/order';
import { clippedSegment } from '../canvas/drawing/sourceLines';
import { withWalls } from '../canvas/drawing/wallArea';

/** Paper round the plan, metres: an outer wall and a little air. */
const AIR = 0.4;

/** All that is drawn of a level, metres; lines of sources may run off the sheet. */
export function levelBounds(home: Home, level: Id, readings: readonly Reading[]): Bounds {
  const rooms = inOrder(home.rooms).filter((room) => room.level === level);
  const walled = roundWalls(withWalls(rooms), AIR);
  const points: Point[] = [
    ...walled.flat(),
    ...rooms.flatMap(({ outline }) => outline),
    ...inOrder(home.pieces)
      .filter((piece) => piece.level === level)
      .flatMap((piece) => rectangle(piece, piece.size)),
    ...inOrder(home.sources)
      .filter((source) => source.level === level)
      .flatMap(({ path }) =>
        nearPart(path, bounds([...walled.flat(), ...rooms.flatMap(({ outline }) => outline)])),
      ),
    ...readings.flatMap(({ at: [x, y] }): Point[] => [
      [x - AIR, y - AIR],
      [x + AIR, y + AIR],
    ]),
  ];
  return points.length > 0 ? bounds(points) : { x0: 0, y0: 0, x1: 6, y1: 4 };
}

/** The walled part of a level with a strip of the grounds, metres; the whole level where nothing is walled. */
export function houseBounds(home: Home, level: Id, readings: readonly Reading[]): Bounds {
  const indoors = withWalls(inOrder(home.rooms).filter((room) => room.level === level));
  if (indoors.length === 0) return levelBounds(home, level, readings);
  const strip = indoors.length === Object.keys(home.rooms).length ? AIR : STRIP;
  return bounds(roundWalls(indoors, strip).flat());
}

/** What lies within a distance of the rooms, whichever way round they were drawn. */
const roundWalls = (rooms: readonly Room[], distance: number): Ring[] =>
  grown(
    floorOutline(
      rooms.map(({ outline }) => outline),
      0,
    ),
    distance,
  );

const STRIP = 1.2;

/** How far off the plan a source is still drawn, metres: a street line beside the house, not one across the valley. */
const NEAR = 4;

/** The place of a source nearest to the middle of the plan, with air round it, where that is not far off the plan. */
function nearPart(path: readonly Point[], plan: Bounds): Point[] {
  const middle: Point = [(plan.x0 + plan.x1) / 2, (plan.y0 + plan.y1) / 2];
  const places = path.map((corner, i) => closestOnSegment(middle, corner, path[i + 1] ?? corner));
  const nearest = places.toSorted((a, b) => a.distance - b.distance)[0];
  if (!nearest) return [];
  const [x, y] = nearest.at;
  if (x < plan.x0 - NEAR || x > plan.x1 + NEAR || y < plan.y0 - NEAR || y > plan.y1 + NEAR) return [];
  return [
    [x - AIR, y - AIR],
    [x + AIR, y + AIR],
  ];
}

/** The sources of a level that run over the sheet. */
export function sourcesSeen(home: Home, level: Id, camera: Camera): Source[] {
  const box = { x0: 0, y0: 0, x1: camera.width, y1: camera.height };
  return inOrder(home.sources).filter((source) => {
    const path = source.path.map((p) => toScreen(camera, p));
    return source.level === level && path.some((a, i) => clippedSegment(a, path[i + 1] ?? a, box) !== null);
  });
}
