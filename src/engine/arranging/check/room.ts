import { signed, winds } from './shapes';
import type { ArrangeFixture, ArrangeOpening, ArrangeRequest, ArrangeRoom } from '../request';
import type { Point, Ring } from '../../geometry/point';

/** A hole in the walls of a room as it is seen from inside. */
export interface Hole {
  kind: ArrangeOpening['kind'];
  a: Point;
  b: Point;
  inward: Point;
  /** Where a leaf turns and how far it reaches into this room; null where none does. */
  leaf: { hinge: Point; shut: Point; radius: number } | null;
}

/** A room with all that a checker asks of it. */
export interface CheckedRoom {
  room: ArrangeRoom;
  holes: Hole[];
  fixtures: { fixture: ArrangeFixture; front: Ring | null }[];
}

const THICKEST_WALL = 0.55;
const STEP = 0.005;

const along = (p: Point, by: Point, metres: number): Point => [p[0] + by[0] * metres, p[1] + by[1] * metres];

/** Depth before a hole, as a ring. */
export const before = ({ a, b, inward }: Pick<Hole, 'a' | 'b' | 'inward'>, depth: number): Ring => [
  a,
  b,
  along(b, inward, depth),
  along(a, inward, depth),
];

export function roomToCheck(request: ArrangeRequest, room: ArrangeRoom): CheckedRoom {
  const holes = request.openings.flatMap((opening) => {
    const owner = request.rooms.find(({ id }) => id === opening.room);
    if (owner?.level !== room.level) return [];
    const own = holeIn(owner.outline, opening);
    if (owner === room) return [own];
    if (opening.kind === 'window') return [];
    const there = across(request, owner, own);
    return there?.room === room ? [there.hole] : [];
  });
  const fixtures = request.fixtures
    .filter(({ level }) => level === room.level)
    .map((fixture) => ({ fixture, front: frontOf(fixture, request.rules.wardrobe) }));
  return { room, holes, fixtures };
}

function holeIn(outline: Ring, opening: ArrangeOpening): Hole {
  const { kind, wall, offset, width, hinge, swing } = opening;
  const [a, b] = [outline[wall], outline[(wall + 1) % outline.length]];
  const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
  const way: Point = [(b[0] - a[0]) / length, (b[1] - a[1]) / length];
  const left = signed(outline) > 0 ? 1 : -1;
  const [start, end] = [along(a, way, offset), along(a, way, offset + width)];
  const inward: Point = [-way[1] * left, way[0] * left];
  const turns = kind === 'door' && swing === 'in';
  return { kind, a: start, b: end, inward, leaf: turns ? leafOf(start, end, way, hinge, width) : null };
}

const leafOf = (
  start: Point,
  end: Point,
  way: Point,
  hinge: 'start' | 'end',
  radius: number,
): Hole['leaf'] =>
  hinge === 'start' ? { hinge: start, shut: way, radius } : { hinge: end, shut: [-way[0], -way[1]], radius };

/** The other room that a hole leads to, and the hole on that room's side of the wall. */
function across(request: ArrangeRequest, owner: ArrangeRoom, hole: Hole) {
  const outward: Point = [-hole.inward[0], -hole.inward[1]];
  const middle: Point = [(hole.a[0] + hole.b[0]) / 2, (hole.a[1] + hole.b[1]) / 2];
  for (let thick = STEP; thick <= THICKEST_WALL; thick += STEP) {
    const at = along(middle, outward, thick);
    const room = request.rooms.find(
      (other) =>
        other !== owner && other.level === owner.level && other.use !== 'grounds' && winds(other.outline, at),
    );
    if (!room) continue;
    const [a, b] = [along(hole.a, outward, thick - STEP), along(hole.b, outward, thick - STEP)];
    const opening = request.openings.find((one) => one.room === owner.id && sameHole(owner, one, hole))!;
    const width = Math.hypot(b[0] - a[0], b[1] - a[1]);
    const way: Point = [(b[0] - a[0]) / width, (b[1] - a[1]) / width];
    const turns = opening.kind === 'door' && opening.swing === 'out';
    const leaf = turns ? leafOf(a, b, way, opening.hinge, width) : null;
    return { room, hole: { kind: hole.kind, a, b, inward: outward, leaf } satisfies Hole };
  }
  return null;
}

function sameHole(owner: ArrangeRoom, opening: ArrangeOpening, hole: Hole): boolean {
  const own = holeIn(owner.outline, opening);
  return own.a[0] === hole.a[0] && own.a[1] === hole.a[1] && own.b[0] === hole.b[0] && own.b[1] === hole.b[1];
}

function frontOf({ outline, front }: ArrangeFixture, depth: number): Ring | null {
  if (front === null || depth === 0) return null;
  const [a, b] = [outline[front % outline.length], outline[(front + 1) % outline.length]];
  const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
  if (length === 0) return null;
  const left = signed(outline) > 0 ? 1 : -1;
  const outward: Point = [((b[1] - a[1]) / length) * left, (-(b[0] - a[0]) / length) * left];
  return before({ a, b, inward: outward }, depth);
}
