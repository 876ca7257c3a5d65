/**
 * Geometry of a second planner, plain and slow, that shares nothing with the first: its own trigonometry, its own clipping
 * of polygons, its own distances.
 */
export type P = readonly [number, number];

export const EMPTY = 1e-9;

/** A rectangle given in axes turned by `angle` degrees about (x, y), as four corners on the plan. */
export function quad(
  { x, y, angle }: { x: number; y: number; angle: number },
  [x0, x1, y0, y1]: readonly [number, number, number, number],
): P[] {
  const t = (angle * Math.PI) / 180;
  const put = (u: number, v: number): P => [
    x + u * Math.cos(t) - v * Math.sin(t),
    y + u * Math.sin(t) + v * Math.cos(t),
  ];
  return [put(x0, y0), put(x1, y0), put(x1, y1), put(x0, y1)];
}

export const turn = (a: P, b: P, c: P): number =>
  (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]);

export const moved = (p: P, by: P, metres: number): P => [p[0] + by[0] * metres, p[1] + by[1] * metres];

export function shoelace(ring: readonly P[]): number {
  let sum = 0;
  for (let i = 0; i < ring.length; i++) {
    const [x0, y0] = ring[i];
    const [x1, y1] = ring[(i + 1) % ring.length];
    sum += x0 * y1 - x1 * y0;
  }
  return sum / 2;
}

/** What two convex rings share, m². */
function shared(a: readonly P[], b: readonly P[]): number {
  const clip = shoelace(b) > 0 ? b : [...b].reverse();
  let left = [...a];
  for (let i = 0; i < clip.length && left.length > 0; i++) {
    const [p, q] = [clip[i], clip[(i + 1) % clip.length]];
    const next: P[] = [];
    for (let k = 0; k < left.length; k++) {
      const [s, e] = [left[k], left[(k + 1) % left.length]];
      const [ds, de] = [turn(p, q, s), turn(p, q, e)];
      if (ds >= 0) next.push(s);
      if (ds * de < 0) {
        const t = ds / (ds - de);
        next.push([s[0] + t * (e[0] - s[0]), s[1] + t * (e[1] - s[1])]);
      }
    }
    left = next;
  }
  return left.length < 3 ? 0 : Math.abs(shoelace(left));
}

/** Whether two convex rings share floor; most lie far apart. */
export function overlap(a: readonly P[], b: readonly P[]): boolean {
  for (const axis of [0, 1] as const) {
    const [as, bs] = [a, b].map((ring) => ring.map((p) => p[axis]));
    if (Math.max(...as) <= Math.min(...bs) || Math.max(...bs) <= Math.min(...as)) return false;
  }
  return shared(a, b) > EMPTY;
}

/** Winding number of a ring about a place. */
export function winding(ring: readonly P[], p: P): number {
  let count = 0;
  for (let i = 0; i < ring.length; i++) {
    const [a, b] = [ring[i], ring[(i + 1) % ring.length]];
    if (a[1] <= p[1] && b[1] > p[1] && turn(a, b, p) > 0) count++;
    if (a[1] > p[1] && b[1] <= p[1] && turn(a, b, p) < 0) count--;
  }
  return count;
}

/** A ring as triangles (ears cut off), so that convex clipping serves any outline. */
export function triangles(ring: readonly P[]): P[][] {
  const left = shoelace(ring) > 0 ? [...ring] : [...ring].reverse();
  const parts: P[][] = [];
  while (left.length > 3) {
    const i = left.findIndex((b, k) => {
      const [a, c] = [left[(k + left.length - 1) % left.length], left[(k + 1) % left.length]];
      const others = left.filter((p) => p !== a && p !== b && p !== c);
      return (
        turn(a, b, c) > 0 &&
        !others.some((p) => turn(a, b, p) >= 0 && turn(b, c, p) >= 0 && turn(c, a, p) >= 0)
      );
    });
    parts.push([left[(i + left.length - 1) % left.length], left[i], left[(i + 1) % left.length]]);
    left.splice(i, 1);
  }
  return [...parts, left];
}

/** Inside, by area: as much of the quad lies in the outline as it has. */
export function inside(outline: readonly P[], corners: readonly P[]): boolean {
  const covered = triangles(outline).reduce((sum, triangle) => sum + shared(corners, triangle), 0);
  return Math.abs(covered - Math.abs(shoelace(corners))) < EMPTY;
}

function toSegment([x, y]: P, a: P, b: P): number {
  const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
  const square = dx * dx + dy * dy;
  const t = square === 0 ? 0 : Math.min(1, Math.max(0, ((x - a[0]) * dx + (y - a[1]) * dy) / square));
  const [offX, offY] = [x - a[0] - t * dx, y - a[1] - t * dy];
  return Math.sqrt(offX * offX + offY * offY);
}

/** Metres from a place to the nearest wall of a ring. */
export function toEdges(p: P, ring: readonly P[]): number {
  let least = Infinity;
  for (let i = 0; i < ring.length; i++)
    least = Math.min(least, toSegment(p, ring[i], ring[(i + 1) % ring.length]));
  return least;
}

/** Metres from a place to what lies in a ring. */
export const toRing = (p: P, ring: readonly P[]): number => (winding(ring, p) !== 0 ? 0 : toEdges(p, ring));

/** Metres between two rings that do not share floor, by their corners and walls. */
export const between = (a: readonly P[], b: readonly P[]): number =>
  Math.min(...a.map((p) => toEdges(p, b)), ...b.map((p) => toEdges(p, a)));
