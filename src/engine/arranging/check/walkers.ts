import { bounds, contains } from '../../geometry/polygon';
import { before, type CheckedRoom } from './room';
import { toArea, toEdge } from './shapes';
import type { Point, Ring } from '../../geometry/point';

/** Metres between the places somebody may stand at, and how much narrower than asked for a way may turn out on them. */
const APART = 0.05;
const NARROWER = 0.052;

const STANDING = 0.6;
const NARROWEST_ESCAPE = 0.45;

/** Places of a room on a lattice, and who comes where. */
export interface Walkers {
  /** Numbers of the places come to from the doors once some areas are taken; null where a door is shut or cut off. */
  comeTo(taken: readonly Ring[]): ReadonlySet<number> | null;
  /** Whether an area is touched by somebody at one of some places, or never was in the empty room. */
  touches(area: Ring, places: ReadonlySet<number>): boolean;
  /** Whether a window that can be climbed through is come to, or none ever was. */
  escapes(places: ReadonlySet<number>): boolean;
}

/** Somebody as broad as the path walks from place to place; `standing` is what stays in the room. */
export function walkersIn(
  { room, holes, fixtures }: CheckedRoom,
  path: number,
  standing: readonly Ring[],
): Walkers {
  const reach = (path - NARROWER) / 2;
  const { x0, y0, x1, y1 } = bounds(room.outline);
  const [i0, j0] = [Math.floor(x0 / APART), Math.floor(y0 / APART)];
  const wide = Math.ceil(x1 / APART) - i0 + 1;
  const high = Math.ceil(y1 / APART) - j0 + 1;
  const placeOf = (n: number): Point => [
    (i0 + (n % wide) + 0.5) * APART,
    (j0 + Math.floor(n / wide) + 0.5) * APART,
  ];
  const all = Array.from({ length: wide * high }, (_, n) => n);
  const kept = [...fixtures.map(({ fixture }) => fixture.outline), ...standing];
  const empty = new Set(
    all.filter((n) => {
      const p = placeOf(n);
      return (
        contains(room.outline, p) &&
        toEdge(p, room.outline) >= reach &&
        kept.every((ring) => toArea(p, ring) >= reach)
      );
    }),
  );
  const near = (ring: Ring, within: number) => {
    const box = bounds(ring);
    return [...empty].filter((n) => {
      const [x, y] = placeOf(n);
      if (x < box.x0 - within || x > box.x1 + within || y < box.y0 - within || y > box.y1 + within)
        return false;
      return toArea([x, y], ring) <= within;
    });
  };
  const standingAt = (kinds: (kind: string) => boolean, least = 0) =>
    holes
      .filter(({ kind, a, b }) => kinds(kind) && Math.hypot(b[0] - a[0], b[1] - a[1]) >= least)
      .map((hole) => near(before(hole, STANDING), 1e-6));
  const doors = standingAt((kind) => kind !== 'window').filter((places) => places.length > 0);

  const walk = (open: ReadonlySet<number>, from: readonly number[]): Set<number> => {
    const found = new Set(from.filter((n) => open.has(n)));
    for (const n of found) {
      for (const row of [-wide, 0, wide])
        for (const aside of [-1, 0, 1]) if (open.has(n + row + aside)) found.add(n + row + aside);
    }
    return found;
  };
  const ever = walk(empty, doors.flat());
  const joined = doors.map((door) => doors.filter((other) => meets(walk(empty, door), other)));
  const windows = standingAt((kind) => kind === 'window', NARROWEST_ESCAPE).filter((places) =>
    meets(ever, places),
  );
  return {
    comeTo(taken) {
      const gone = new Set(
        taken.flatMap((ring) => near(ring, reach).filter((n) => toArea(placeOf(n), ring) < reach)),
      );
      const open = new Set([...empty].filter((n) => !gone.has(n)));
      const whole = doors.every((door, i) => {
        const found = walk(open, door);
        return found.size > 0 && joined[i].every((other) => meets(found, other));
      });
      return whole ? walk(open, doors.flat()) : null;
    },
    touches(area, places) {
      const beside = near(area, path / 2).filter((n) => ever.has(n));
      return beside.length === 0 || beside.some((n) => places.has(n));
    },
    escapes: (places) =>
      room.use !== 'sleeping' || windows.length === 0 || windows.some((window) => meets(places, window)),
  };
}

const meets = (places: ReadonlySet<number>, others: readonly number[]): boolean =>
  others.some((n) => places.has(n));
