import { Clipper, EndType, FillRule, JoinType, type Paths64 } from 'clipper2-ts';
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
  const rooms = Clipper.union(wound(rings), FillRule.NonZero);
  const reach = (closing / 2) * PER_METRE;
  if (reach <= 0) return toRings(rooms);
  const grown = Clipper.inflatePaths(rooms, reach, JoinType.Miter, EndType.Polygon, 4);
  const closed = Clipper.inflatePaths(
    Clipper.union(grown, FillRule.NonZero),
    -reach,
    JoinType.Miter,
    EndType.Polygon,
    4,
  );
  // The rooms themselves are added again, so that rounding in the two offsets never takes floor away.
  return toRings(Clipper.union(closed, rooms, FillRule.NonZero));
}

/** What is left of a ring when the holes are cut out of it: outer rings and holes, even-odd. */
export function without(ring: Ring, holes: readonly Ring[]): Ring[] {
  return toRings(Clipper.difference(wound([ring]), wound(holes), FillRule.NonZero));
}

/** What two rings share: outer rings and holes, even-odd. */
export function intersection(a: Ring, b: Ring): Ring[] {
  return toRings(Clipper.intersect(wound([a]), wound([b]), FillRule.NonZero));
}

/**
 * Outlines made here keep their sense: outer rings counter-clockwise, holes clockwise. The three below take such rings
 * and give such rings, metres.
 */

/** The area pushed outward by a distance with sharp corners; holes shrink. Negative: inward. */
export function grown(rings: readonly Ring[], by: number): Ring[] {
  return toRings(Clipper.inflatePaths(asGiven(rings), by * PER_METRE, JoinType.Miter, EndType.Polygon, 4));
}

/** Areas put together; gaps stay. */
export function joined(rings: readonly Ring[]): Ring[] {
  return toRings(Clipper.union(asGiven(rings), FillRule.NonZero));
}

/** What is left of an area when another is cut out of it. */
export function cut(rings: readonly Ring[], gone: readonly Ring[]): Ring[] {
  return toRings(Clipper.difference(asGiven(rings), asGiven(gone), FillRule.NonZero));
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
