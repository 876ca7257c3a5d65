import { closestOnSegment, segmentsCross } from './segment';
import type { Point, Ring } from './point';

/** An upright rectangle that holds something, metres. */
export interface Bounds {
  x0: number;
  y0: number;
  x1: number;
  y1: number;
}

/** Area in m², positive where the ring runs counter-clockwise. */
export function signedArea(ring: Ring): number {
  const [ox, oy] = ring[0] ?? [0, 0];
  let twice = 0;
  for (let i = 1; i + 1 < ring.length; i++) {
    const [ax, ay] = ring[i];
    const [bx, by] = ring[i + 1];
    twice += (ax - ox) * (by - oy) - (bx - ox) * (ay - oy);
  }
  return twice / 2;
}

/** Area in m², whatever the winding. */
export const area = (ring: Ring): number => Math.abs(signedArea(ring));

/** Centre of mass; of a ring without area, the mean of its corners. */
export function centroid(ring: Ring): Point {
  const [ox, oy] = ring[0];
  let twice = 0;
  let x = 0;
  let y = 0;
  for (let i = 1; i + 1 < ring.length; i++) {
    const [ax, ay] = [ring[i][0] - ox, ring[i][1] - oy];
    const [bx, by] = [ring[i + 1][0] - ox, ring[i + 1][1] - oy];
    const part = ax * by - bx * ay;
    twice += part;
    x += part * (ax + bx);
    y += part * (ay + by);
  }
  if (twice !== 0) return [ox + x / (3 * twice), oy + y / (3 * twice)];
  const sum = ring.reduce<Point>((s, p) => [s[0] + p[0], s[1] + p[1]], [0, 0]);
  return [sum[0] / ring.length, sum[1] / ring.length];
}

/** The smallest upright rectangle round the points; inside out (Infinity to -Infinity) for none. */
export function bounds(points: Iterable<Point>): Bounds {
  const box = { x0: Infinity, y0: Infinity, x1: -Infinity, y1: -Infinity };
  for (const [x, y] of points) {
    box.x0 = Math.min(box.x0, x);
    box.y0 = Math.min(box.y0, y);
    box.x1 = Math.max(box.x1, x);
    box.y1 = Math.max(box.y1, y);
  }
  return box;
}

/** Whether p lies inside the ring; on its edge either answer may come. */
export const contains = (ring: Ring, p: Point): boolean => containsEvenOdd([ring], p);

/** Whether p lies inside an odd number of the rings: outer rings and their holes, in any order and winding. */
export function containsEvenOdd(rings: readonly Ring[], p: Point): boolean {
  let inside = false;
  for (const ring of rings) {
    for (let i = 0, j = ring.length - 1; i < ring.length; j = i++) {
      const [ax, ay] = ring[i];
      const [bx, by] = ring[j];
      if (ay > p[1] !== by > p[1] && p[0] < ax + ((p[1] - ay) * (bx - ax)) / (by - ay)) inside = !inside;
    }
  }
  return inside;
}

/** Distance from p to the ring's edge, positive inside and negative outside, metres. */
export function insideDistance(ring: Ring, p: Point): number {
  let least = Infinity;
  for (let i = 0, j = ring.length - 1; i < ring.length; j = i++) {
    least = Math.min(least, closestOnSegment(p, ring[j], ring[i]).distance);
  }
  return contains(ring, p) ? least : -least;
}

/**
 * Two walls of an outline that meet where they should not, by their numbers (wall i runs from corner i to i + 1), and
 * where; null for a simple outline. A wall that turns straight back over the one before it counts.
 */
export function selfCrossing(ring: Ring): { first: number; second: number; at: Point } | null {
  const n = ring.length;
  const corner = (i: number): Point => ring[i % n];
  for (let i = 0; i < n; i++) {
    for (let j = i + 1; j < n; j++) {
      const at =
        j === i + 1 || (i === 0 && j === n - 1)
          ? foldsBack(corner, i, j)
          : segmentsCross(corner(i), corner(i + 1), corner(j), corner(j + 1));
      if (at) return { first: i, second: j, at };
    }
  }
  return null;
}

/** Neighbouring walls share a corner and may not share more. */
function foldsBack(corner: (i: number) => Point, i: number, j: number): Point | null {
  const [before, after] = j === i + 1 ? [i, j] : [j, i];
  const [a, shared, b] = [corner(before), corner(before + 1), corner(after + 1)];
  const nearer =
    Math.hypot(a[0] - shared[0], a[1] - shared[1]) < Math.hypot(b[0] - shared[0], b[1] - shared[1]);
  const end = nearer ? a : b;
  const other = nearer ? b : a;
  return closestOnSegment(end, shared, other).distance < 1e-9 ? end : null;
}

/**
 * The place deepest inside a ring, where a label has most room (pole of inaccessibility), to within 1 cm or 1 % of the
 * ring's size. Quadtree search: a square cannot hold a place deeper than its middle's depth plus its half diagonal.
 */
export function labelPlace(ring: Ring): Point {
  const box = bounds(ring);
  const [w, h] = [box.x1 - box.x0, box.y1 - box.y0];
  const middle = centroid(ring);
  if (!(Math.min(w, h) > 0)) return middle;
  // A sliver would else begin with thousands of squares.
  const size = Math.max(Math.min(w, h), Math.max(w, h) / 64);
  const precision = Math.max(0.01, size / 100);
  let best = { at: middle, depth: insideDistance(ring, middle) };
  let squares: { at: Point; half: number; most: number }[] = [];
  const look = (at: Point, half: number) => {
    const depth = insideDistance(ring, at);
    if (depth > best.depth) best = { at, depth };
    squares.push({ at, half, most: depth + half * Math.SQRT2 });
  };
  const half = size / 2;
  for (let x = box.x0 + half; x < box.x1 + half; x += size) {
    for (let y = box.y0 + half; y < box.y1 + half; y += size) look([x, y], half);
  }
  while (squares.length > 0) {
    const open = squares.filter((square) => square.most > best.depth + precision);
    squares = [];
    for (const { at, half } of open) {
      const h = half / 2;
      for (const [dx, dy] of [
        [-h, -h],
        [h, -h],
        [-h, h],
        [h, h],
      ] as const)
        look([at[0] + dx, at[1] + dy], h);
    }
  }
  return best.at;
}
