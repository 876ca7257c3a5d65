import { cross, distance, dot, lerp, sub, type Point } from './point';

/** Where a segment comes nearest to a point. */
export interface Closest {
  at: Point;
  /** Share of the way from a to b, 0…1. */
  t: number;
  distance: number;
}

/** The place of segment ab nearest to p; a segment of no length is its first end. */
export function closestOnSegment(p: Point, a: Point, b: Point): Closest {
  const along = sub(b, a);
  const square = dot(along, along);
  const t = square === 0 ? 0 : Math.min(1, Math.max(0, dot(sub(p, a), along) / square));
  const at = t === 1 ? b : lerp(a, b, t);
  return { at, t, distance: distance(p, at) };
}

/**
 * A place that segments ab and cd share, or null. Touching counts; of two that overlap in line, the first shared place
 * along ab is given.
 */
export function segmentsCross(a: Point, b: Point, c: Point, d: Point): Point | null {
  const r = sub(b, a);
  const s = sub(d, c);
  const across = cross(r, s);
  const gap = sub(c, a);
  // Below a nanometre over the shorter length two directions cannot be told apart in double precision.
  if (Math.abs(across) <= 1e-12 * Math.hypot(...r) * Math.hypot(...s)) return overlap(a, b, c, d);
  const t = cross(gap, s) / across;
  const u = cross(gap, r) / across;
  return t >= 0 && t <= 1 && u >= 0 && u <= 1 ? lerp(a, b, t) : null;
}

function overlap(a: Point, b: Point, c: Point, d: Point): Point | null {
  if (closestOnSegment(a, c, d).distance < 1e-9) return a;
  const first = closestOnSegment(c, a, b);
  const second = closestOnSegment(d, a, b);
  const shared = [first, second].filter((end) => end.distance < 1e-9).sort((x, y) => x.t - y.t)[0];
  if (shared) return shared.at;
  return closestOnSegment(b, c, d).distance < 1e-9 ? b : null;
}

/** Distance from p to an open path of one corner or more; Infinity for none. */
export function distanceToPath(p: Point, path: readonly Point[]): number {
  if (path.length === 1) return distance(p, path[0]);
  let least = Infinity;
  for (let i = 1; i < path.length; i++)
    least = Math.min(least, closestOnSegment(p, path[i - 1], path[i]).distance);
  return least;
}
