import { area, bounds } from '../../geometry/polygon';
import { closestOnSegment } from '../../geometry/segment';
import { contains } from '../../geometry/polygon';
import { cut, intersection } from '../../geometry/outline';
import { toPlan } from '../../geometry/pose';
import type { Point, Ring } from '../../geometry/point';
import type { Put } from '../place';

/** A rectangle in the axes of a piece, as a ring on the plan: x0, x1, y0, y1. */
export function ringAt(put: Pick<Put, 'at' | 'angle'>, [x0, x1, y0, y1]: readonly number[]): Ring {
  const corners: Ring = [
    [x0, y0],
    [x1, y0],
    [x1, y1],
    [x0, y1],
  ];
  return corners.map((corner) => toPlan(put, corner));
}

/** Whether two areas share floor; clipping leaves out slivers under a square centimetre. */
export function shareFloor(a: Ring, b: Ring): boolean {
  const [p, q] = [bounds(a), bounds(b)];
  if (p.x1 <= q.x0 || q.x1 <= p.x0 || p.y1 <= q.y0 || q.y1 <= p.y0) return false;
  return intersection(a, b).some((ring) => area(ring) > 0);
}

/** Whether an area lies within an outline, but for slivers. */
export const liesWithin = (ring: Ring, outline: Ring): boolean =>
  cut([forward(ring)], [forward(outline)]).length === 0;

const forward = (ring: Ring): Ring => {
  const twice = ring.reduce((sum, [ax, ay], i) => {
    const [bx, by] = ring[(i + 1) % ring.length];
    return sum + ax * by - bx * ay;
  }, 0);
  return twice < 0 ? ring.toReversed() : ring;
};

/** Metres from a place to the nearest wall of a ring, or to a line of two points. */
export const toEdge = (p: Point, ring: Ring): number =>
  Math.min(...ring.map((a, i) => closestOnSegment(p, a, ring[(i + 1) % ring.length]).distance));

/** Metres from a place to what lies in a ring; 0 inside. */
export const toArea = (p: Point, ring: Ring): number =>
  ring.length > 2 && contains(ring, p) ? 0 : toEdge(p, ring);

/** Metres between two areas; 0 where they share floor. */
export const apart = (a: Ring, b: Ring): number =>
  (a.length > 2 && b.length > 2 && shareFloor(a, b)) || a.some((p) => toArea(p, b) === 0)
    ? 0
    : Math.min(...a.map((p) => toArea(p, b)), ...b.map((p) => toArea(p, a)));
