/** A place on the plan, metres: x to the right, y up the page. */
export type Point = readonly [number, number];

/** A closed outline without its first corner repeated, either winding. */
export type Ring = readonly Point[];

export const add = (a: Point, b: Point): Point => [a[0] + b[0], a[1] + b[1]];

export const sub = (a: Point, b: Point): Point => [a[0] - b[0], a[1] - b[1]];

export const scale = (a: Point, factor: number): Point => [a[0] * factor, a[1] * factor];

export const dot = (a: Point, b: Point): number => a[0] * b[0] + a[1] * b[1];

/** Positive where b lies to the left of a. */
export const cross = (a: Point, b: Point): number => a[0] * b[1] - a[1] * b[0];

export const distance = (a: Point, b: Point): number => Math.hypot(a[0] - b[0], a[1] - b[1]);

/** The place a share t of the way from a to b. */
export const lerp = (a: Point, b: Point, t: number): Point => [
  a[0] + (b[0] - a[0]) * t,
  a[1] + (b[1] - a[1]) * t,
];

/** p turned about the origin, degrees counter-clockwise; quarter turns are exact. */
export function rotate(p: Point, degrees: number): Point {
  const [cos, sin] = direction(degrees);
  return [p[0] * cos - p[1] * sin, p[0] * sin + p[1] * cos];
}

const QUARTERS: readonly Point[] = [
  [1, 0],
  [0, 1],
  [-1, 0],
  [0, -1],
];

// Math.cos(Math.PI / 2) is 6e-17: furniture along a wall must not lean by that much, or flush sides cross the wall.
function direction(degrees: number): Point {
  const quarter = degrees / 90;
  if (Number.isInteger(quarter)) return QUARTERS[((quarter % 4) + 4) % 4];
  const angle = (degrees * Math.PI) / 180;
  return [Math.cos(angle), Math.sin(angle)];
}
