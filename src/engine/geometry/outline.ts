// By file: the package's index brings all of it along.
import { ClipType, FillRule, PathType, type Paths64 } from 'clipper2-ts/dist/Core.js';
import { Clipper64 } from 'clipper2-ts/dist/Engine.js';
import { ClipperOffset, EndType, JoinType } from 'clipper2-ts/dist/Offset.js';
import { signedArea } from './polygon';
import type { Ring } from './point';

// Clipping works on whole numbers: a hundredth of a millimetre keeps every cross product within the limits of the
// format (|x|, |y| ≤ 1,000 m) exact enough, and is far below what a tape measure tells.
const PER_METRE = 1e5;

// Slivers below a square centimetre are rounding, not floor.
const LEAST_AREA = 1e-4;

/**
 * The floor that rooms of one level make together, metres: outer rings and holes, to be read even-odd. Gaps between
 * rooms narrower than `closing` (their walls) count as floor; corners keep their shape.
 */
export function floorOutline(rings: readonly Ring[], closing = 0.5): Ring[] {
  const rooms = combined(ClipType.Union, wound(rings));
  const reach = closing / 2;
  if (reach <= 0) return toRings(rooms);
  const closed = pushed(combined(ClipType.Union, pushed(rooms, reach)), -reach);
  // The rooms themselves are added again, so that rounding in the two offsets never takes floor away.
  return toRings(combined(ClipType.Union, closed, rooms));
}

/** What is left of a ring when the holes are cut out of it: outer rings and holes, even-odd. */
export function without(ring: Ring, holes: readonly Ring[]): Ring[] {
  return toRings(combined(ClipType.Difference, wound([ring]), wound(holes)));
}

/** What two rings share: outer rings and holes, even-odd. */
export function intersection(a: Ring, b: Ring): Ring[] {
  return toRings(combined(ClipType.Intersection, wound([a]), wound([b])));
}

/**
 * Outlines made here keep their sense: outer rings counter-clockwise, holes clockwise. The three below take such rings
 * and give such rings, metres.
 */

/** The area pushed outward by a distance with sharp corners; holes shrink. Negative: inward. */
export function grown(rings: readonly Ring[], by: number): Ring[] {
  return toRings(pushed(asGiven(rings), by));
}

/** Areas put together; gaps stay. */
export function joined(rings: readonly Ring[]): Ring[] {
  return toRings(combined(ClipType.Union, asGiven(rings)));
}

/** What is left of an area when another is cut out of it. */
export function cut(rings: readonly Ring[], gone: readonly Ring[]): Ring[] {
  return toRings(combined(ClipType.Difference, asGiven(rings), asGiven(gone)));
}

function combined(how: ClipType, subject: Paths64, clip: Paths64 = []): Paths64 {
  const clipper = new Clipper64();
  clipper.addPaths(subject, PathType.Subject);
  clipper.addPaths(clip, PathType.Clip);
  const solution: Paths64 = [];
  clipper.execute(how, FillRule.NonZero, solution);
  return solution;
}

/** Sharp corners up to four times the distance. */
function pushed(paths: Paths64, by: number): Paths64 {
  const offset = new ClipperOffset(4);
  offset.addPaths(paths, JoinType.Miter, EndType.Polygon);
  const solution: Paths64 = [];
  offset.execute(by * PER_METRE, solution);
  return solution;
}

function asGiven(rings: readonly Ring[]): Paths64 {
  return rings.map((ring) =>
    ring.map(([x, y]) => ({ x: Math.round(x * PER_METRE), y: Math.round(y * PER_METRE) })),
  );
}

/** Every ring counter-clockwise, so that overlapping rooms of either winding add up rather than cancel. */
function wound(rings: readonly Ring[]): Paths64 {
  return asGiven(rings).map((path, i) => (signedArea(rings[i]) < 0 ? path.reverse() : path));
}

function toRings(paths: Paths64): Ring[] {
  return paths
    .map((path): Ring => path.map(({ x, y }) => [x / PER_METRE, y / PER_METRE] as const))
    .filter((ring) => Math.abs(signedArea(ring)) > LEAST_AREA);
}
