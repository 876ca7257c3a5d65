import { before, type CheckedRoom } from './room';
import { extent, toArea, toEdge, winds } from './shapes';
import type { Point, Ring } from '../../geometry/point';

/** Metres between the places somebody may stand at, and how much narrower than asked for a way may turn out on them. */
const APART = 0.05;
const NARROWER = 0.052;
const STRICT = 0.048;

const STANDING = 0.6;
const NARROWEST_ESCAPE = 0.45;

/** Yes or no for each place of a lattice. */
export type Places = Uint8Array;

/** What stays in a room, and the floor beside it from which it is used. */
interface Standing {
  foot: Ring;
  sides: readonly Ring[];
}

/** Places of a room on a lattice, and who comes where. */
export interface Walkers {
  /** Places come to from the doors once some areas are taken; null where a door is shut or cut off. */
  comeTo(taken: readonly Ring[]): Places | null;
  /** Whether an area is touched by somebody at one of some places, or never was in the empty room. */
  touches(area: Ring, places: Places): boolean;
  /** Whether a window that can be climbed through is come to, or none ever was. */
  escapes(places: Places): boolean;
}

/** What is asked for where the empty room has no way as broad as the path, to all that this one leads to; metres. */
const LEAST_PATH = 0.5;
/** Two lattices tell a way's width apart by no more than this, metres. */
const DOUBT = 0.06;

/**
 * Somebody as broad as the path walks from place to place; `standing` is what stays in the room, with the floor beside it from
 * which it is used. Where it is in doubt whether the empty room has a way so broad to all that the least way leads to, somebody
 * as broad as the least: the planner asks for the widest there is, and this look has no ruler as fine.
 */
export function walkersIn(room: CheckedRoom, path: number, standing: readonly Standing[]): Walkers {
  const feet = standing.map(({ foot }) => foot);
  const sides = standing.flatMap((one) => one.sides);
  if (path <= LEAST_PATH) return walkersOf(room, path, feet, NARROWER);
  const linksAt = (width: number) => walkersOf(room, width, feet, STRICT).links(sides);
  const wide = linksAt(path + DOUBT) < linksAt(LEAST_PATH - DOUBT) ? LEAST_PATH : path;
  return walkersOf(room, wide, feet, NARROWER);
}

function walkersOf(
  { room, holes, fixtures }: CheckedRoom,
  path: number,
  standing: readonly Ring[],
  narrower: number,
): Walkers & { links(sides: readonly Ring[]): number } {
  const reach = (path - narrower) / 2;
  const { x0, x1, y0, y1 } = extent(room.outline);
  // A rim of places that are outside: nobody walks off the lattice.
  const [i0, j0] = [Math.floor(x0 / APART) - 1, Math.floor(y0 / APART) - 1];
  const wide = Math.ceil(x1 / APART) - i0 + 1;
  const high = Math.ceil(y1 / APART) - j0 + 1;
  const placeOf = (n: number): Point => [
    (i0 + (n % wide) + 0.5) * APART,
    (j0 + Math.floor(n / wide) + 0.5) * APART,
  ];
  /** Numbers of the places within some metres of an extent. */
  const about = (ring: Ring, within: number): number[] => {
    const box = extent(ring);
    const clamp = (value: number, count: number) => Math.max(0, Math.min(count - 1, value));
    const [left, right] = [box.x0 - within, box.x1 + within].map((x) =>
      clamp(Math.floor(x / APART) - i0, wide),
    );
    const [low, top] = [box.y0 - within, box.y1 + within].map((y) => clamp(Math.floor(y / APART) - j0, high));
    const numbers: number[] = [];
    for (let j = low; j <= top; j++) for (let i = left; i <= right; i++) numbers.push(j * wide + i);
    return numbers;
  };
  const kept = [...fixtures.map(({ fixture }) => fixture.outline), ...standing];
  const empty: Places = new Uint8Array(wide * high);
  for (const n of about(room.outline, 0)) {
    const p = placeOf(n);
    if (winds(room.outline, p) && toEdge(p, room.outline) >= reach) empty[n] = 1;
  }
  for (const ring of kept)
    for (const n of about(ring, reach)) if (empty[n] && toArea(placeOf(n), ring) < reach) empty[n] = 0;

  const near = (ring: Ring, within: number) =>
    about(ring, within).filter((n) => empty[n] && toArea(placeOf(n), ring) <= within);
  const standingAt = (kinds: (kind: string) => boolean, least = 0) =>
    holes
      .filter(({ kind, a, b }) => kinds(kind) && Math.hypot(b[0] - a[0], b[1] - a[1]) >= least)
      .map((hole) => near(before(hole, STANDING), 1e-6));
  const doors = standingAt((kind) => kind !== 'window').filter((places) => places.length > 0);

  const steps = [-wide - 1, -wide, -wide + 1, -1, 1, wide - 1, wide, wide + 1];
  const walk = (open: Places, from: readonly number[]): Places => {
    const found: Places = new Uint8Array(open.length);
    const due: number[] = [];
    const come = (n: number) => {
      if (!open[n] || found[n]) return;
      found[n] = 1;
      due.push(n);
    };
    from.forEach(come);
    for (let n = due.pop(); n !== undefined; n = due.pop()) for (const step of steps) come(n + step);
    return found;
  };
  const ever = walk(empty, doors.flat());
  const joined = doors.map((door) => {
    const found = walk(empty, door);
    return doors.filter((other) => meets(found, other));
  });
  const windows = standingAt((kind) => kind === 'window', NARROWEST_ESCAPE).filter((places) =>
    meets(ever, places),
  );
  const beside = (area: Ring) => near(area, path / 2).filter((n) => ever[n]);
  const pairs = joined.reduce((sum, others) => sum + others.length, 0);
  return {
    // What is come to grows with a narrower body: as many links are the same links.
    links: (sides) =>
      doors.length + pairs + windows.length + sides.filter((side) => beside(side).length > 0).length,
    comeTo(taken) {
      const open = empty.slice();
      for (const ring of taken)
        for (const n of about(ring, reach)) if (open[n] && toArea(placeOf(n), ring) < reach) open[n] = 0;
      const whole = doors.every((door, i) => {
        const found = walk(open, door);
        return meets(found, door) && joined[i].every((other) => meets(found, other));
      });
      return whole ? walk(open, doors.flat()) : null;
    },
    touches(area, places) {
      const from = beside(area);
      return from.length === 0 || from.some((n) => places[n]);
    },
    escapes: (places) =>
      room.use !== 'sleeping' || windows.length === 0 || windows.some((window) => meets(places, window)),
  };
}

const meets = (places: Places, others: readonly number[]): boolean => others.some((n) => places[n]);
