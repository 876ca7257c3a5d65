import { cut, floorOutline, grown, joined } from '../../../engine/geometry/outline';
import { contains, signedArea } from '../../../engine/geometry/polygon';
import {
  add,
  cross,
  distance,
  dot,
  lerp,
  scale,
  sub,
  type Point,
  type Ring,
} from '../../../engine/geometry/point';
import type { Opening, Room } from '../../../home/home';
import { openingPlace, type OpeningPlace } from './openingLines';

/** Thickness of walls, metres: outer ones stand outside the rooms, inner ones on the line two rooms share. */
export const OUTER = 0.22;
export const INNER = 0.09;

/** Rooms with walls: grounds have none. */
export const withWalls = (rooms: readonly Room[]): Room[] => rooms.filter((room) => room.use !== 'grounds');

/** The walls of one level as one area with its openings cut out; rings to be read even-odd. */
export function wallArea(rooms: readonly Room[], openings: readonly Opening[]): Ring[] {
  const indoors = withWalls(rooms);
  if (indoors.length === 0) return [];
  const rings = indoors.map(({ outline }) => (signedArea(outline) < 0 ? outline.toReversed() : outline));
  const floor = floorOutline(rings);
  const outer = cut(grown(floor, OUTER), floor);
  const between = cut(floor, rings);
  const walls = joined([...outer, ...between, ...sharedWalls(indoors)]);
  const gone = openings.flatMap((opening) => {
    const room = indoors.find(({ id }) => id === opening.room);
    const place = room && openingPlace(opening, room);
    return place ? [throughWall(place, wallDepth(place, room, indoors))] : [];
  });
  return cut(walls, gone);
}

/** How far a wall reaches out of its room at an opening, and whether another room lies behind it. */
export interface WallDepth {
  inner: boolean;
  depth: number;
}

// Rooms are drawn to their inner faces, so a gap up to half a metre is the wall between them.
const WIDEST_GAP = 0.5;

export function wallDepth({ start, end, out }: OpeningPlace, room: Room, rooms: readonly Room[]): WallDepth {
  const middle = lerp(start, end, 0.5);
  for (let gap = 0; gap <= WIDEST_GAP; gap += 0.02) {
    const behind = add(middle, scale(out, gap + 0.01));
    if (rooms.some((other) => other !== room && contains(other.outline, behind)))
      return { inner: true, depth: gap };
  }
  return { inner: false, depth: OUTER };
}

function throughWall({ start, end, out }: OpeningPlace, { inner, depth }: WallDepth): Ring {
  const before = scale(out, inner ? -INNER / 2 - 0.005 : -0.005);
  const behind = scale(out, depth + (inner ? INNER / 2 : 0) + 0.005);
  const ring = [add(start, before), add(end, before), add(end, behind), add(start, behind)];
  return signedArea(ring) < 0 ? ring.reverse() : ring;
}

/** Strips along the parts of edges where two rooms touch or overlap. */
function sharedWalls(rooms: readonly Room[]): Ring[] {
  return rooms.flatMap((room) => {
    const others = rooms.filter((other) => other !== room);
    return room.outline.flatMap((a, i) => {
      const b = room.outline[(i + 1) % room.outline.length]!;
      return sharedParts(a, b, others).map(([from, to]) => strip(from, to));
    });
  });
}

/** The parts of edge ab that have another room on both sides of them, or on the far side. */
function sharedParts(a: Point, b: Point, others: readonly Room[]): [Point, Point][] {
  const length = distance(a, b);
  if (length < INNER) return [];
  const along = scale(sub(b, a), 1 / length);
  const cuts = [0, length];
  for (const { outline } of others) {
    for (const corner of outline) {
      const offset = sub(corner, a);
      const at = dot(offset, along);
      if (at > 0 && at < length && Math.abs(cross(along, offset)) < WIDEST_GAP) cuts.push(at);
    }
    cuts.push(...crossings(a, along, length, outline));
  }
  cuts.sort((x, y) => x - y);
  const side: Point = [-along[1] * 0.01, along[0] * 0.01];
  const parts: [Point, Point][] = [];
  for (let i = 1; i < cuts.length; i++) {
    const [from, to] = [cuts[i - 1]!, cuts[i]!];
    if (to - from < 1e-6) continue;
    const middle = add(a, scale(along, (from + to) / 2));
    const isShared = others.some(
      ({ outline }) => contains(outline, add(middle, side)) || contains(outline, sub(middle, side)),
    );
    if (isShared) parts.push([add(a, scale(along, from)), add(a, scale(along, to))]);
  }
  return parts;
}

function crossings(a: Point, along: Point, length: number, outline: Ring): number[] {
  return outline.flatMap((c, i) => {
    const d = outline[(i + 1) % outline.length]!;
    const across = cross(along, sub(d, c));
    if (Math.abs(across) < 1e-9) return [];
    const at = cross(sub(c, a), sub(d, c)) / across;
    return at > 0 && at < length ? [at] : [];
  });
}

/** A wall along a line, half its thickness longer at both ends so that corners close. */
function strip(a: Point, b: Point): Ring {
  const half = INNER / 2;
  const along = scale(sub(b, a), half / distance(a, b));
  const side: Point = [-along[1], along[0]];
  const [from, to] = [sub(a, along), add(b, along)];
  return [sub(from, side), sub(to, side), add(to, side), add(from, side)];
}
