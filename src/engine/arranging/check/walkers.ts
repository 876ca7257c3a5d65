import { before, type CheckedRoom } from './room';
import { extent, toArea, toEdge, winds } from './shapes';
import type { Point, Ring } from '../../geometry/point';

/** Metres between the places somebody may stand at, and how much narrower than asked for a way may turn out on them. */
const APART = 0.05;
const NARROWER = 0.052;

const STANDING = 0.6;
const NARROWEST_ESCAPE = 0.45;

/** Yes or no for each place of a lattice. */
export type Places = Uint8Array;

/** Places of a room on a lattice, and who comes where. */
export interface Walkers {
  /** Places come to from the doors once some areas are taken; null where a door is shut or cut off. */
  comeTo(taken: readonly Ring[]): Places | null;
  /** Whether an area is touched by somebody at one of some places, or never was in the empty room. */
  touches(area: Ring, places: Places): boolean;
  /** Whether a window that can be climbed through is come to, or none ever was. */
  escapes(places: Places): boolean;
}

/** Somebody as broad as the path walks from place to place; `standing` is what stays in the room. */
export function walkersIn(
  { room, holes, fixtures }: CheckedRoom,
  path: number,
  standing: readonly Ring[],
): Walkers {
  const reach = (path - NARROWER) / 2;
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
  return {
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
      const beside = near(area, path / 2).filter((n) => ever[n]);
      return beside.length === 0 || beside.some((n) => places[n]);
    },
    escapes: (places) =>
      room.use !== 'sleeping' || windows.length === 0 || windows.some((window) => meets(places, window)),
  };
}

const meets = (places: Places, others: readonly number[]): boolean => others.some((n) => places[n]);
