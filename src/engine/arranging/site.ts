import { add, cross, distance, dot, lerp, scale, sub, type Point, type Ring } from '../geometry/point';
import { bounds, contains, insideDistance, signedArea } from '../geometry/polygon';
import { intersection } from '../geometry/outline';
import type { ArrangeFixture, ArrangeOpening, ArrangeRequest, ArrangeRoom } from './request';
import type { Box, Leaf } from './box';
import type { RuleSettings } from './ruleSettings';

/** A stretch of one wall, metres from the wall's first end. */
export interface Stretch {
  id: string;
  from: number;
  to: number;
}

/** A straight wall as one sees it: corners within a straight line count as none. */
export interface Wall {
  a: Point;
  b: Point;
  length: number;
  along: Point;
  inward: Point;
  doors: Stretch[];
  windows: Stretch[];
}

/** Everything in and round one room that a piece must respect. */
export interface Site {
  room: ArrangeRoom;
  rules: RuleSettings;
  walls: Wall[];
  fixtures: { id: string; kind: ArrangeFixture['kind']; ring: Ring; front: Box | null }[];
  leaves: { id: string; leaf: Leaf }[];
  /** Floor kept free before each door and gap, and that on which somebody stands who has come in. */
  landings: { id: string; box: Box; before: Box }[];
  /** The line in the wall, and the floor from which somebody opens it and climbs out. */
  windows: { id: string; ring: Ring; before: Box }[];
}

/** Depth of the floor on which somebody stands at a door or a window: the project's choice, metres. */
const STANDING = 0.6;

// Walls between rooms are thinner than this.
const THICKEST_WALL = 0.5;

// An opening is drawn on the wall of one room and speaks for the neighbour's wall within this of it.
const SAME_WALL = 0.05;

type Asked = Pick<ArrangeRequest, 'rooms' | 'openings' | 'fixtures' | 'rules'>;

/** What a room asks of the pieces that stand in it. */
export function siteOf(request: Asked, room: ArrangeRoom): Site {
  const { rules } = request;
  const { landing, wardrobe } = rules;
  const walls = wallsOf(room.outline);
  const site: Site = { room, rules, walls, fixtures: [], leaves: [], landings: [], windows: [] };
  for (const opening of request.openings) {
    const owner = request.rooms.find(({ id }) => id === opening.room);
    if (!owner || owner.level !== room.level) continue;
    if (owner === room) placeOpening(site, holeIn(owner, opening), opening, { side: 'in', landing });
    else if (opening.kind !== 'window') placeAcross(site, request.rooms, { owner, opening, landing });
  }
  for (const { id, level, kind, outline, front } of request.fixtures) {
    if (level !== room.level || intersection(outline, room.outline).length === 0) continue;
    site.fixtures.push({ id, kind, ring: outline, front: frontBox(outline, front, wardrobe) });
  }
  return site;
}

/** A hole in a wall, seen from a room: its ends on that room's wall, and the way into the room. */
interface Hole {
  start: Point;
  end: Point;
  inward: Point;
}

function holeIn({ outline }: ArrangeRoom, { wall, offset, width }: ArrangeOpening): Hole {
  const a = outline[wall];
  const b = outline[(wall + 1) % outline.length];
  const along = unit(sub(b, a));
  return {
    start: add(a, scale(along, offset)),
    end: add(a, scale(along, offset + width)),
    inward: inwardOf(outline, along),
  };
}

/** A door of another room that leads into this one, moved through the wall to this room's side of it. */
function placeAcross(
  site: Site,
  rooms: readonly ArrangeRoom[],
  { owner, opening, landing }: { owner: ArrangeRoom; opening: ArrangeOpening; landing: number },
): void {
  const hole = holeIn(owner, opening);
  const outward = scale(hole.inward, -1);
  const middle = lerp(hole.start, hole.end, 0.5);
  const beyond = add(middle, scale(outward, THICKEST_WALL + SAME_WALL));
  const onOtherSide = nextRoom(rooms, owner, middle, beyond);
  if (onOtherSide?.room !== site.room) return;
  const through = scale(outward, onOtherSide.thickness);
  placeOpening(
    site,
    { start: add(hole.start, through), end: add(hole.end, through), inward: outward },
    opening,
    { side: 'out', landing },
  );
}

/** The first other room on the way from a wall outwards, and the metres of wall before it. */
function nextRoom(rooms: readonly ArrangeRoom[], owner: ArrangeRoom, from: Point, to: Point) {
  const reach = distance(from, to);
  for (let d = 0.01; d <= reach; d += 0.02) {
    const at = lerp(from, to, d / reach);
    const room = rooms.find(
      (other) =>
        other !== owner &&
        other.level === owner.level &&
        other.use !== 'grounds' &&
        contains(other.outline, at),
    );
    if (room) return { room, thickness: Math.max(0, d - insideDistance(room.outline, at)) };
  }
  return null;
}

function placeOpening(
  site: Site,
  hole: Hole,
  opening: ArrangeOpening,
  { side, landing }: { side: 'in' | 'out'; landing: number },
): void {
  const { start, end, inward } = hole;
  const { id, kind, width, swing, hinge } = opening;
  const wall = site.walls.find(
    ({ a, along, length }) =>
      [start, end].every((p) => Math.abs(cross(along, sub(p, a))) <= SAME_WALL) &&
      dot(along, sub(lerp(start, end, 0.5), a)) >= 0 &&
      dot(along, sub(lerp(start, end, 0.5), a)) <= length,
  );
  if (wall) {
    const places = [start, end].map((p) => dot(wall.along, sub(p, wall.a)));
    const stretch = { id, from: Math.min(...places), to: Math.max(...places) };
    (kind === 'window' ? wall.windows : wall.doors).push(stretch);
  }
  if (kind === 'window') {
    site.windows.push({ id, ring: [start, end], before: boxBefore(start, end, inward, STANDING) });
    return;
  }
  const along = unit(sub(end, start));
  site.landings.push({
    id,
    box: boxBefore(start, end, inward, landing),
    before: boxBefore(start, end, inward, STANDING),
  });
  if (kind === 'door' && swing === side) {
    const atStart = hinge === 'start';
    const shut = atStart ? along : scale(along, -1);
    site.leaves.push({ id, leaf: { hinge: atStart ? start : end, shut, open: inward, radius: width } });
  }
}

/** The rectangle of some depth before the line from a to b. */
function boxBefore(a: Point, b: Point, towards: Point, depth: number): Box {
  const [x, y] = add(lerp(a, b, 0.5), scale(towards, depth / 2));
  const [ux, uy] = unit(sub(b, a));
  return { x, y, ux, uy, hx: distance(a, b) / 2, hy: depth / 2 };
}

function frontBox(outline: Ring, front: number | null, depth: number): Box | null {
  if (front === null || depth === 0) return null;
  const a = outline[front % outline.length];
  const b = outline[(front + 1) % outline.length];
  if (distance(a, b) === 0) return null;
  return boxBefore(a, b, scale(inwardOf(outline, unit(sub(b, a))), -1), depth);
}

function wallsOf(outline: Ring): Wall[] {
  const distinct = outline.filter((p, i) => distance(p, outline[(i + 1) % outline.length]) > 0);
  const turns = distinct.filter((p, i) => {
    const before = distinct[(i + distinct.length - 1) % distinct.length];
    const after = distinct[(i + 1) % distinct.length];
    const [u, v] = [sub(p, before), sub(after, p)];
    // A corner that strays less than a millimetre from the straight line is none.
    return Math.abs(cross(u, v)) > 1e-3 * distance(before, after);
  });
  return turns.map((a, i) => {
    const b = turns[(i + 1) % turns.length];
    const along = unit(sub(b, a));
    return { a, b, length: distance(a, b), along, inward: inwardOf(outline, along), doors: [], windows: [] };
  });
}

const unit = (p: Point): Point => scale(p, 1 / Math.hypot(p[0], p[1]));

/** The way into an outline from a wall that runs along it. */
const inwardOf = (outline: Ring, [x, y]: Point): Point => (signedArea(outline) > 0 ? [-y, x] : [y, -x]);

/** The room that holds a place of a level; null outside all. */
export function roomAt(request: Pick<ArrangeRequest, 'rooms'>, level: string, at: Point): ArrangeRoom | null {
  const inside = request.rooms.filter(
    (room) => room.level === level && within(room.outline, at) && contains(room.outline, at),
  );
  return inside.find(({ use }) => use !== 'grounds') ?? inside[0] ?? null;
}

function within(outline: Ring, [x, y]: Point): boolean {
  const box = bounds(outline);
  return x >= box.x0 && x <= box.x1 && y >= box.y0 && y <= box.y1;
}
