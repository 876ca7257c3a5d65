import type { Point, Ring } from '../../geometry/point';
import type { Put } from '../place';

// Shapes of the second look, which shares none with the search: turned, clipped and measured here.

/** Less shared floor than a square centimetre is rounding. */
const SLIVER = 1e-4;

/** A rectangle in the axes of a piece, as a ring on the plan: x0, x1, y0, y1. */
export function ringAt({ at, angle }: Pick<Put, 'at' | 'angle'>, [x0, x1, y0, y1]: readonly number[]): Ring {
  const turn = (angle * Math.PI) / 180;
  const [cos, sin] = [Math.cos(turn), Math.sin(turn)];
  const corner = (x: number, y: number): Point => [at[0] + x * cos - y * sin, at[1] + x * sin + y * cos];
  return [corner(x0, y0), corner(x1, y0), corner(x1, y1), corner(x0, y1)];
}

/** Twice the area of a triangle, positive where c lies to the left of the way from a to b. */
const leftOf = (a: Point, b: Point, c: Point): number =>
  (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]);

/** Area in m², positive where the ring runs counter-clockwise. */
export function signed(ring: Ring): number {
  let twice = 0;
  for (let i = 0; i < ring.length; i++) {
    const [a, b] = [ring[i], ring[(i + 1) % ring.length]];
    twice += (a[0] + b[0]) * (b[1] - a[1]);
  }
  return twice / 2;
}

/** The extent of some places. */
export function extent(ring: Ring): { x0: number; x1: number; y0: number; y1: number } {
  const [xs, ys] = [ring.map(([x]) => x), ring.map(([, y]) => y)];
  return { x0: Math.min(...xs), x1: Math.max(...xs), y0: Math.min(...ys), y1: Math.max(...ys) };
}

/** How often a ring winds round a place (Sunday 2001): not at all where it lies outside. */
export function winds(ring: Ring, p: Point): boolean {
  let turns = 0;
  for (let i = 0; i < ring.length; i++) {
    const [a, b] = [ring[i], ring[(i + 1) % ring.length]];
    if (a[1] <= p[1] && b[1] > p[1] && leftOf(a, b, p) > 0) turns++;
    if (a[1] > p[1] && b[1] <= p[1] && leftOf(a, b, p) < 0) turns--;
  }
  return turns !== 0;
}

/** What a convex ring and any other share, m²: the other clipped to each side of it (Sutherland & Hodgman 1974). */
function shared(convex: Ring, other: Ring): number {
  const sides = signed(convex) < 0 ? convex.toReversed() : convex;
  let left: Point[] = [...other];
  for (let i = 0; i < sides.length && left.length > 0; i++) {
    const [a, b] = [sides[i], sides[(i + 1) % sides.length]];
    const off = left.map((p) => leftOf(a, b, p));
    left = left.flatMap((p, k): Point[] => {
      const next = (k + 1) % left.length;
      const stays = off[k] >= 0 ? [p] : [];
      if (off[k] >= 0 === off[next] >= 0) return stays;
      const t = off[k] / (off[k] - off[next]);
      return [...stays, [p[0] + t * (left[next][0] - p[0]), p[1] + t * (left[next][1] - p[1])]];
    });
  }
  return Math.abs(signed(left));
}

/** Whether two areas share floor; the first is convex. */
export function shareFloor(convex: Ring, other: Ring): boolean {
  const [p, q] = [extent(convex), extent(other)];
  if (p.x1 <= q.x0 || q.x1 <= p.x0 || p.y1 <= q.y0 || q.y1 <= p.y0) return false;
  return shared(convex, other) > SLIVER;
}

/** Whether a convex area lies within an outline, but for slivers. */
export const liesWithin = (convex: Ring, outline: Ring): boolean =>
  Math.abs(signed(convex)) - shared(convex, outline) < SLIVER;

/** Metres from a place to the nearest wall of a ring, or to a line of two points. */
export function toEdge([x, y]: Point, ring: Ring): number {
  let least = Infinity;
  for (let i = 0; i < ring.length; i++) {
    const [ax, ay] = ring[i];
    const [bx, by] = ring[(i + 1) % ring.length];
    const [dx, dy] = [bx - ax, by - ay];
    const long = dx * dx + dy * dy;
    const along = long === 0 ? 0 : Math.max(0, Math.min(1, ((x - ax) * dx + (y - ay) * dy) / long));
    const [px, py] = [ax + along * dx - x, ay + along * dy - y];
    least = Math.min(least, px * px + py * py);
  }
  return Math.sqrt(least);
}

/** Metres from a place to what lies in a ring; 0 inside. */
export const toArea = (p: Point, ring: Ring): number =>
  ring.length > 2 && winds(ring, p) ? 0 : toEdge(p, ring);

/** Metres between two areas, or a line and an area, the first convex; 0 where they share floor. */
export const apart = (a: Ring, b: Ring): number =>
  (a.length > 2 && b.length > 2 && shareFloor(a, b)) || a.some((p) => toArea(p, b) === 0)
    ? 0
    : Math.min(...a.map((p) => toArea(p, b)), ...b.map((p) => toArea(p, a)));
