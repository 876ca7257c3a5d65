import type { Contour } from '../../../engine/contours/bands';
import type { Point, Ring } from '../../../engine/geometry/point';
import type { Grid } from '../../../engine/grid/grid';

/** A contour as it is stroked: whether it closes on itself or ends at the edge of the grid. */
export interface ContourLine {
  points: readonly Point[];
  closed: boolean;
}

/** The lines of a contour: its rings without the parts that only follow the edge of the grid. */
export function contourLines(contour: Contour, grid: Grid): ContourLine[] {
  return contour.polygons.flatMap((rings) => rings.flatMap((ring) => insideParts(ring, grid)));
}

function insideParts(ring: Ring, { x0, y0, step, nx, ny }: Grid): ContourLine[] {
  const [x1, y1] = [x0 + nx * step, y0 + ny * step];
  const near = (a: number, b: number) => Math.abs(a - b) < 1e-6;
  // A side lies on the edge where both its ends lie on the same edge.
  const onEdge = (a: Point, b: Point) =>
    (near(a[0], b[0]) && (near(a[0], x0) || near(a[0], x1))) ||
    (near(a[1], b[1]) && (near(a[1], y0) || near(a[1], y1)));
  const n = ring.length;
  const edges = ring.map((a, i) => onEdge(a, ring[(i + 1) % n]!));
  const first = edges.indexOf(true);
  if (first < 0) return [{ points: ring, closed: true }];
  const lines: ContourLine[] = [];
  let points: Point[] = [];
  for (let k = 1; k <= n; k++) {
    const i = (first + k) % n;
    points.push(ring[i]!);
    if (!edges[i]) continue;
    if (points.length > 1) lines.push({ points, closed: false });
    points = [];
  }
  return lines;
}
