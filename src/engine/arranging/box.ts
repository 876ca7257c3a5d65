import { contains } from '../geometry/polygon';
import { toPlan, type Pose } from '../geometry/pose';
import { rotate, type Point, type Ring } from '../geometry/point';

/** A rectangle turned any way: its middle, the unit vector of its own x axis, and half its extent along x and y. */
export interface Box {
  x: number;
  y: number;
  ux: number;
  uy: number;
  hx: number;
  hy: number;
}

/** Extents in the axes of a piece or an opening, metres. */
export interface Extent {
  x0: number;
  x1: number;
  y0: number;
  y1: number;
}

/** Floor that may be shared without anybody noticing, metres. */
export const TOLERANCE = 0.005;

/** The box that an extent in a piece’s own coordinates covers on the plan, metres. */
export function boxOf(pose: Pose, { x0, x1, y0, y1 }: Extent): Box {
  const [x, y] = toPlan(pose, [(x0 + x1) / 2, (y0 + y1) / 2]);
  const [ux, uy] = rotate([1, 0], pose.angle);
  return { x, y, ux, uy, hx: (x1 - x0) / 2, hy: (y1 - y0) / 2 };
}

/** The corners of a box, counter-clockwise. */
export function corners({ x, y, ux, uy, hx, hy }: Box): Ring {
  const corner = (sx: number, sy: number): Point => [
    x + sx * hx * ux - sy * hy * uy,
    y + sx * hx * uy + sy * hy * ux,
  ];
  return [corner(-1, -1), corner(1, -1), corner(1, 1), corner(-1, 1)];
}

const grownBy = (box: Box, by: number): Box => ({ ...box, hx: box.hx + by, hy: box.hy + by });

/**
 * Whether two boxes share floor deeper than the tolerance: no axis of either keeps them apart. Asked for every pair of
 * places, so nothing is made on the way.
 */
export const boxesOverlap = (a: Box, b: Box): boolean => boxesNearer(a, b, -TOLERANCE);

/** Whether no axis of two boxes keeps them as far apart as `gap`, metres; negative: they overlap by as much. */
function boxesNearer(a: Box, b: Box, gap: number): boolean {
  const dx = b.x - a.x;
  const dy = b.y - a.y;
  const far = a.hx + a.hy + b.hx + b.hy + gap;
  if (dx > far || dx < -far || dy > far || dy < -far) return false;
  const cos = Math.abs(a.ux * b.ux + a.uy * b.uy);
  const sin = Math.abs(a.ux * b.uy - a.uy * b.ux);
  return (
    Math.abs(dx * a.ux + dy * a.uy) < a.hx + b.hx * cos + b.hy * sin + gap &&
    Math.abs(dy * a.ux - dx * a.uy) < a.hy + b.hx * sin + b.hy * cos + gap &&
    Math.abs(dx * b.ux + dy * b.uy) < b.hx + a.hx * cos + a.hy * sin + gap &&
    Math.abs(dy * b.ux - dx * b.uy) < b.hy + a.hx * sin + a.hy * cos + gap
  );
}

/** Whether the whole box lies inside the outline, but for the tolerance. */
export function boxInside(box: Box, ring: Ring): boolean {
  const inner = grownBy(box, -TOLERANCE);
  return contains(ring, [box.x, box.y]) && !edgeEnters(inner, ring);
}

/** Whether box and outline share floor deeper than the tolerance. */
export function boxMeetsRing(box: Box, ring: Ring): boolean {
  return edgeEnters(grownBy(box, -TOLERANCE), ring) || contains(ring, [box.x, box.y]);
}

/** Whether a wall of the outline runs through the inside of the box. */
function edgeEnters(box: Box, ring: Ring): boolean {
  if (box.hx <= 0 || box.hy <= 0) return false;
  let before = inAxesOf(box, ring[ring.length - 1]);
  for (const p of ring) {
    const after = inAxesOf(box, p);
    if (segmentEnters(before, after, box.hx, box.hy)) return true;
    before = after;
  }
  return false;
}

const inAxesOf = ({ x, y, ux, uy }: Box, [px, py]: Point): Point => [
  (px - x) * ux + (py - y) * uy,
  (py - y) * ux - (px - x) * uy,
];

/** Whether a segment passes through |x| < hx, |y| < hy, by clipping it to both slabs (Liang & Barsky 1984). */
function segmentEnters([ax, ay]: Point, [bx, by]: Point, hx: number, hy: number): boolean {
  // Most walls pass by on one side.
  if ((ax >= hx && bx >= hx) || (ax <= -hx && bx <= -hx)) return false;
  if ((ay >= hy && by >= hy) || (ay <= -hy && by <= -hy)) return false;
  const [dx, dy] = [bx - ax, by - ay];
  const [sx, sy] = [dx > 0 ? hx : -hx, dy > 0 ? hy : -hy];
  const [x0, x1] = dx === 0 ? [0, 1] : [(-sx - ax) / dx, (sx - ax) / dx];
  const [y0, y1] = dy === 0 ? [0, 1] : [(-sy - ay) / dy, (sy - ay) / dy];
  return Math.max(0, x0, y0) < Math.min(1, x1, y1);
}

/** Metres between a box and an outline, or an open line of two points; 0 where they share floor. */
export function distanceToRing(box: Box, ring: Ring): number {
  if (ring.length > 2 && boxMeetsRing(box, ring)) return 0;
  const local = ring.map((p) => inAxesOf(box, p));
  return Math.min(...local.map((p, i) => segmentToBox(p, local[(i + 1) % local.length], box.hx, box.hy)));
}

/**
 * Whether two boxes are nearer to each other than some metres: most are kept apart by an axis, some share floor; else a
 * corner of one is nearest to the other.
 */
export const nearerThan = (a: Box, b: Box, metres: number): boolean =>
  boxesNearer(a, b, metres) &&
  (boxesNearer(a, b, 0) || Math.min(cornersOff(a, b), cornersOff(b, a)) < metres * metres);

/** Square of the metres from the nearest corner of one box to another box. */
function cornersOff(box: Box, { x, y, ux, uy, hx, hy }: Box): number {
  const [dx, dy] = [x - box.x, y - box.y];
  const [mx, my] = [dx * box.ux + dy * box.uy, dy * box.ux - dx * box.uy];
  const [cos, sin] = [ux * box.ux + uy * box.uy, uy * box.ux - ux * box.uy];
  let least = Infinity;
  for (let k = 0; k < 4; k++) {
    const sx = k & 1 ? hx : -hx;
    const sy = k & 2 ? hy : -hy;
    const px = Math.max(0, Math.abs(mx + sx * cos - sy * sin) - box.hx);
    const py = Math.max(0, Math.abs(my + sx * sin + sy * cos) - box.hy);
    least = Math.min(least, px * px + py * py);
  }
  return least;
}

function segmentToBox(a: Point, b: Point, hx: number, hy: number): number {
  if (segmentEnters(a, b, hx, hy)) return 0;
  const toBox = ([x, y]: Point) => Math.hypot(Math.max(0, Math.abs(x) - hx), Math.max(0, Math.abs(y) - hy));
  const dx = b[0] - a[0];
  const dy = b[1] - a[1];
  const square = dx * dx + dy * dy;
  const toSegment = (x: number, y: number) => {
    const t = square === 0 ? 0 : Math.min(1, Math.max(0, ((x - a[0]) * dx + (y - a[1]) * dy) / square));
    return Math.hypot(x - a[0] - t * dx, y - a[1] - t * dy);
  };
  return Math.min(
    toBox(a),
    toBox(b),
    toSegment(-hx, -hy),
    toSegment(hx, -hy),
    toSegment(hx, hy),
    toSegment(-hx, hy),
  );
}

/** The floor a door leaf sweeps: a quarter disc about its hinge between where it is shut and where it stands open. */
export interface Leaf {
  hinge: Point;
  shut: Point;
  open: Point;
  radius: number;
}

/** Whether a box stands in the sweep of a leaf, by cutting it down to the leaf's quarter and measuring from the hinge. */
export function boxMeetsLeaf(box: Box, { hinge, shut, open, radius }: Leaf): boolean {
  const reach = radius - TOLERANCE;
  const away = Math.hypot(box.x - hinge[0], box.y - hinge[1]);
  if (away > reach + Math.hypot(box.hx, box.hy)) return false;
  const inQuarter = corners(box).map(([x, y]): Point => {
    const [dx, dy] = [x - hinge[0], y - hinge[1]];
    return [dx * shut[0] + dy * shut[1], dx * open[0] + dy * open[1]];
  });
  const cut = beyond(beyond(inQuarter, 0), 1);
  if (cut.length < 3) return false;
  const origin: Box = { x: 0, y: 0, ux: 1, uy: 0, hx: 0, hy: 0 };
  return contains(cut, [0, 0]) || distanceToRing(origin, cut) < reach;
}

/** The part of a convex outline where coordinate `axis` exceeds the tolerance (Sutherland & Hodgman 1974). */
function beyond(ring: Ring, axis: 0 | 1): Ring {
  const kept: Point[] = [];
  ring.forEach((p, i) => {
    const q = ring[(i + 1) % ring.length];
    const [a, b] = [p[axis] - TOLERANCE, q[axis] - TOLERANCE];
    if (a > 0) kept.push(p);
    if (a > 0 !== b > 0)
      kept.push([p[0] + ((q[0] - p[0]) * a) / (a - b), p[1] + ((q[1] - p[1]) * a) / (a - b)]);
  });
  return kept;
}
