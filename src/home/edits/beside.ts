import { bounds, centroid } from '../../engine/geometry/polygon';
import { KINDS } from '../kinds/kinds';
import { shifted } from '../kinds/outlined';
import { tidy } from '../kinds/tidy';
import { roomAt } from '../questions/roomAt';
import { thingAt } from './onPlan';
import { liesInside } from './slideInside';
import type { Home, Id, KindName, Point, Ref } from '../home';
import type { Kind, Thing } from '../kinds/kind';

/** Metres between furniture and its copy; rooms share a wall. */
const GAP = 0.1;
/** Metres to which a point or a straight line counts as wide. */
const LEAST = 0.3;
/** What touches does not overlap. */
const TOUCH = 1e-3;

type Extent = ReturnType<typeof bounds>;

const overlap = (a: Extent, b: Extent) =>
  a.x0 < b.x1 - TOUCH && b.x0 < a.x1 - TOUCH && a.y0 < b.y1 - TOUCH && b.y0 < a.y1 - TOUCH;

/** What a copy must not lie over: rooms over rooms, furniture over furniture. */
function obstacles(home: Home, level: Id, kinds: readonly KindName[]): Extent[] {
  return kinds.flatMap((name) => {
    const kind: Kind = KINDS[name];
    return (Object.values(home[kind.collection]) as Thing[])
      .filter((thing) => kind.level(home, thing) === level)
      .filter((thing) => name !== 'room' || home.rooms[thing.id]!.use !== 'grounds')
      .map((thing) => bounds(kind.shape(home, thing).points));
  });
}

/** How far copies of some things go, so that they stand beside them: right, left, below or above, where there is room. */
export function beside(home: Home, refs: readonly Ref[]): Point {
  const found = refs.flatMap((ref) => {
    const at = thingAt(home, ref);
    return at.ok ? [{ ref, level: at.kind.level(home, at.thing), ...at.kind.shape(home, at.thing) }] : [];
  });
  if (found.length === 0) return [0, 0];
  const isRoom = found.some(({ ref }) => ref.kind === 'room');
  const { level } = found[0]!;
  const { x0, y0, x1, y1 } = bounds(found.flatMap(({ points }) => points));
  const gap = isRoom ? 0 : GAP;
  const [across, up] = [Math.max(LEAST, x1 - x0) + gap, Math.max(LEAST, y1 - y0) + gap];
  const ways: Point[] = [
    [across, 0],
    [-across, 0],
    [0, -up],
    [0, up],
  ];

  const taken = obstacles(home, level, isRoom ? ['room'] : ['piece', 'fixture']);
  const isFree = ([x, y]: Point) =>
    taken.every((other) => !overlap({ x0: x0 + x, y0: y0 + y, x1: x1 + x, y1: y1 + y }, other));
  const stays = (way: Point) =>
    found.every(({ ref, points, closed }) => {
      const room = ref.kind === 'room' || !closed ? null : roomAt(home, level, centroid(points));
      return room === null || liesInside(shifted(points, way), room.outline);
    });
  return tidy(ways.find((way) => isFree(way) && stays(way)) ?? ways.find(isFree) ?? ways[0]!);
}
