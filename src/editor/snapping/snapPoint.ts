import { add, cross, distance, dot, scale, sub } from '../../engine/geometry/point';
import { closestOnSegment } from '../../engine/geometry/segment';
import type { Point } from '../../home/home';
import { tidy } from '../../home/kinds/tidy';
import type { SnapScene } from './candidates';

type SnapReason = 'corner' | 'wall' | 'square' | 'aligned' | 'grid' | 'free';

export interface Snapped {
  at: Point;
  reason: SnapReason;
  /** Lines that show what it was lined up with. */
  guides: { from: Point; to: Point }[];
}

export interface SnapWishes {
  /** Metres within which something pulls; 0 switches snapping off. */
  pull: number;
  /** The corner before: the way from it is kept at right angles to `along` and to the page. */
  from?: Point;
  along?: readonly Point[];
  /** Metres; null for none. */
  grid?: number | null;
}

/** Where nothing else pulls, lengths come out in whole decimetres. */
export const GRID = 0.1;

const rounded = (value: number, grid: number) => Math.round(value / grid) * grid;

const AXES: readonly Point[] = [
  [1, 0],
  [0, 1],
];

function nearest<T>(all: Iterable<T>, far: (each: T) => number, reach: number): T | null {
  let best: T | null = null;
  let least = reach;
  for (const each of all) {
    const d = far(each);
    if (d <= least) [best, least] = [each, d];
  }
  return best;
}

/** Directions a wall may take from a corner: along and square to the page and to what is there already. */
function directions(along: readonly Point[]): Point[] {
  const wished = [...AXES];
  for (const way of along) {
    const length = Math.hypot(way[0], way[1]);
    if (length === 0) continue;
    const unit = scale(way, 1 / length);
    wished.push(unit, [-unit[1], unit[0]]);
  }
  return wished.filter((way, i) => wished.findIndex((other) => Math.abs(cross(way, other)) < 1e-6) === i);
}

/** Degrees from a straight or square way within which a typed length means that way. */
const NEARLY = 20;

/** The unit way a hand means that points `toward`: along or square to the page or to what is there already, else its own. */
export function meantWay(toward: Point, along: readonly Point[]): Point {
  const length = Math.hypot(toward[0], toward[1]);
  const own = scale(toward, 1 / length);
  const close = Math.cos((NEARLY * Math.PI) / 180);
  let best = own;
  let most = close;
  for (const way of directions(along)) {
    const share = dot(way, own);
    if (Math.abs(share) > most) [best, most] = [scale(way, Math.sign(share)), Math.abs(share)];
  }
  return best;
}

/** Along one line the other wishes still count: walls it meets, points it comes level with, whole decimetres. */
function alongLine(
  scene: SnapScene,
  origin: Point,
  way: Point,
  at: Point,
  { pull, grid = GRID }: SnapWishes,
): Snapped {
  const free = dot(sub(at, origin), way);
  const place = (t: number) => tidy(add(origin, scale(way, t)));
  const crossings: number[] = [];
  for (const [a, b] of scene.lines) {
    const wall = sub(b, a);
    const across = cross(way, wall);
    if (Math.abs(across) < 1e-9) continue;
    const u = cross(sub(a, origin), way) / across;
    if (u >= 0 && u <= 1) crossings.push(cross(sub(a, origin), wall) / across);
  }
  const met = nearest(crossings, (t) => Math.abs(t - free), pull);
  if (met !== null) return { at: place(met), reason: 'wall', guides: [] };
  const level = nearest(scene.points, (p) => Math.abs(dot(sub(p, origin), way) - free), pull);
  if (level) {
    const to = place(dot(sub(level, origin), way));
    if (distance(level, to) > 1e-6) return { at: to, reason: 'aligned', guides: [{ from: level, to }] };
  }
  return { at: place(grid ? rounded(free, grid) : free), reason: 'square', guides: [] };
}

function square(scene: SnapScene, at: Point, wishes: SnapWishes): Snapped | null {
  const { from, along = [], pull } = wishes;
  if (!from || distance(from, at) < 1e-9) return null;
  const way = nearest(directions(along), (each) => Math.abs(cross(each, sub(at, from))), pull);
  if (!way) return null;
  const found = alongLine(scene, from, way, at, wishes);
  return { ...found, guides: [{ from, to: found.at }, ...found.guides] };
}

function wall(scene: SnapScene, at: Point, { pull, grid = GRID }: SnapWishes): Snapped | null {
  const line = nearest(scene.lines, ([a, b]) => closestOnSegment(at, a, b).distance, pull);
  if (!line) return null;
  const [a, b] = line;
  const foot = closestOnSegment(at, a, b).at;
  // Along a wall of the page the free coordinate keeps to the grid; along a slanted one that would leave the wall.
  if (grid && Math.abs(a[0] - b[0]) < 1e-9)
    return { at: tidy([a[0], rounded(foot[1], grid)]), reason: 'wall', guides: [] };
  if (grid && Math.abs(a[1] - b[1]) < 1e-9)
    return { at: tidy([rounded(foot[0], grid), a[1]]), reason: 'wall', guides: [] };
  return { at: tidy(foot), reason: 'wall', guides: [] };
}

/** Each coordinate by itself: level with a corner somewhere, else on the grid. */
function aligned(scene: SnapScene, at: Point, { pull, grid = GRID }: SnapWishes): Snapped {
  const sameX = nearest(scene.points, (p) => Math.abs(p[0] - at[0]), pull);
  const sameY = nearest(scene.points, (p) => Math.abs(p[1] - at[1]), pull);
  const to = tidy([
    sameX ? sameX[0] : grid ? rounded(at[0], grid) : at[0],
    sameY ? sameY[1] : grid ? rounded(at[1], grid) : at[1],
  ]);
  const guides = [sameX, sameY].flatMap((from) => (from ? [{ from, to }] : []));
  return { at: to, reason: guides.length > 0 ? 'aligned' : grid ? 'grid' : 'free', guides };
}

/** The place a pointer means: a corner, else square to the corner before, else a wall, else level with something, else the grid. */
export function snapPoint(scene: SnapScene, at: Point, wishes: SnapWishes): Snapped {
  if (wishes.pull <= 0) return { at: tidy(at), reason: 'free', guides: [] };
  const corner = nearest(scene.points, (p) => distance(p, at), wishes.pull);
  if (corner) return { at: corner, reason: 'corner', guides: [] };
  return square(scene, at, wishes) ?? wall(scene, at, wishes) ?? aligned(scene, at, wishes);
}
