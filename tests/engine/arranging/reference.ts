/**
 * A second planner, plain and slow, that shares nothing with the first but the estimate: its own trigonometry, its own
 * polygon clipping, its own sums over cells, and every combination tried. It knows one level and pieces of the kinds bed
 * and desk.
 */
import { fieldOf } from '../../../src/engine/mapping/field';
import type { ArrangeOpening, ArrangePiece, ArrangeRequest } from '../../../src/engine/arranging/request';

type P = readonly [number, number];

export interface Place {
  piece: ArrangePiece;
  room: string;
  x: number;
  y: number;
  /** Degrees. */
  angle: number;
  mirrored: boolean;
}

const TOL = 0.005;
const EMPTY = 1e-9;

/** A rectangle given in the piece's axes, as four corners on the plan. */
function quad(
  { x, y, angle }: Pick<Place, 'x' | 'y' | 'angle'>,
  x0: number,
  x1: number,
  y0: number,
  y1: number,
): P[] {
  const t = (angle * Math.PI) / 180;
  const put = (u: number, v: number): P => [
    x + u * Math.cos(t) - v * Math.sin(t),
    y + u * Math.sin(t) + v * Math.cos(t),
  ];
  return [put(x0, y0), put(x1, y0), put(x1, y1), put(x0, y1)];
}

function footprint(place: Place, less = 0): P[] {
  const [w, l] = place.piece.size;
  return quad(place, -w / 2 + less, w / 2 - less, -l / 2 + less, l / 2 - less);
}

function strips(place: Place, less = 0): P[] {
  const [w, l] = place.piece.size;
  const { left, right, foot } = place.piece.access;
  const [plus, minus] = place.mirrored ? [right, left] : [left, right];
  return quad(place, -w / 2 - minus + less, w / 2 + plus - less, -l / 2 - foot + less, l / 2 - less);
}

const turn = (a: P, b: P, c: P) => (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]);

function shoelace(ring: readonly P[]): number {
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

const overlap = (a: readonly P[], b: readonly P[]) => shared(a, b) > EMPTY;

/** Winding number of a ring about a place. */
function winding(ring: readonly P[], p: P): number {
  let count = 0;
  for (let i = 0; i < ring.length; i++) {
    const [a, b] = [ring[i], ring[(i + 1) % ring.length]];
    if (a[1] <= p[1] && b[1] > p[1] && turn(a, b, p) > 0) count++;
    if (a[1] > p[1] && b[1] <= p[1] && turn(a, b, p) < 0) count--;
  }
  return count;
}

/** A ring as triangles (ears cut off), so that convex clipping serves any outline. */
function triangles(ring: readonly P[]): P[][] {
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
function inside(outline: readonly P[], corners: readonly P[]): boolean {
  const covered = triangles(outline).reduce((sum, triangle) => sum + shared(corners, triangle), 0);
  return Math.abs(covered - Math.abs(shoelace(corners))) < EMPTY;
}

interface Hole {
  a: P;
  b: P;
  inward: P;
}

function holeOf(outline: readonly P[], { wall, offset, width }: ArrangeOpening): Hole {
  const [a, b] = [outline[wall], outline[(wall + 1) % outline.length]];
  const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
  const [ux, uy] = [(b[0] - a[0]) / length, (b[1] - a[1]) / length];
  const side = shoelace(outline) > 0 ? 1 : -1;
  return {
    a: [a[0] + ux * offset, a[1] + uy * offset],
    b: [a[0] + ux * (offset + width), a[1] + uy * (offset + width)],
    inward: [-uy * side, ux * side],
  };
}

const moved = (p: P, by: P, metres: number): P => [p[0] + by[0] * metres, p[1] + by[1] * metres];

/** The rules of the room that a place breaks, by word. `hard` leaves out preferences. */
export function broken(request: ArrangeRequest, place: Place): { hard: string[]; preferred: string[] } {
  const room = request.rooms.find(({ id }) => id === place.room)!;
  const hard: string[] = [];
  const preferred: string[] = [];
  if (!inside(room.outline, footprint(place, TOL))) hard.push('outside');
  if (!inside(room.outline, strips(place, TOL))) hard.push('access');
  for (const { level, outline } of request.fixtures) {
    if (level !== room.level) continue;
    const parts = triangles(outline);
    if (parts.some((part) => overlap(footprint(place, TOL), part))) hard.push('fixture');
    if (parts.some((part) => overlap(strips(place, TOL), part))) hard.push('access');
  }
  const [w, l] = place.piece.size;
  const head = quad(place, -w / 2, w / 2, l / 2, l / 2);
  const [h0, h1] = [head[0], head[1]];
  let backed = false;
  const corners = room.outline.length;
  for (let i = 0; i < corners; i++) {
    const [a, b] = [room.outline[i], room.outline[(i + 1) % corners]];
    const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
    const along = (p: P) => ((p[0] - a[0]) * (b[0] - a[0]) + (p[1] - a[1]) * (b[1] - a[1])) / length;
    const off = (p: P) => Math.abs(turn(a, b, p)) / length;
    const [from, to] = [Math.min(along(h0), along(h1)), Math.max(along(h0), along(h1))];
    const middleOff = Math.abs(turn(a, b, [place.x, place.y])) / length;
    if (off(h0) > 0.1 || off(h1) > 0.1 || middleOff < l / 2 - TOL || from < -TOL || to > length + TOL)
      continue;
    backed = true;
    for (const opening of request.openings) {
      if (opening.room !== room.id || opening.wall !== i || place.piece.kind !== 'bed') continue;
      const common = Math.min(to, opening.offset + opening.width) - Math.max(from, opening.offset);
      if (common <= TOL) continue;
      if (opening.kind === 'window') preferred.push('window');
      else hard.push('door');
    }
  }
  if (!backed) hard.push('wall');
  if (place.piece.uses.some(({ side }) => !supported(request, place, side))) hard.push('support');
  for (const opening of request.openings) {
    if (opening.room !== room.id || opening.kind === 'window') continue;
    const { a, b, inward } = holeOf(room.outline, opening);
    const landing = [a, b, moved(b, inward, 0.6), moved(a, inward, 0.6)];
    if (overlap(footprint(place, TOL), landing)) hard.push('landing');
    if (opening.kind !== 'door' || opening.swing !== 'in') continue;
    const [hinge, far] = opening.hinge === 'start' ? [a, b] : [b, a];
    const shut: P = [(far[0] - hinge[0]) / opening.width, (far[1] - hinge[1]) / opening.width];
    const arc = Array.from({ length: 181 }, (_, i): P => {
      const t = ((i / 180) * Math.PI) / 2;
      const r = opening.width - TOL;
      return moved(moved(hinge, shut, r * Math.cos(t)), inward, r * Math.sin(t));
    });
    if (overlap(footprint(place, TOL), [hinge, ...arc])) hard.push('swing');
  }
  return { hard, preferred };
}

/** Whether two places of one room take each other's floor. */
export function clash(a: Place, b: Place): boolean {
  if (a.room !== b.room) return false;
  return (
    overlap(footprint(a, TOL / 2), strips(b, TOL / 2)) || overlap(strips(a, TOL / 2), footprint(b, TOL / 2))
  );
}

/** The body's rectangle in the axes of its piece. */
function body({ kind, size }: ArrangePiece, side: string): [number, number, number, number] {
  if (kind === 'desk') return [-0.3, 0.3, -size[1] / 2 - 0.6, -size[1] / 2];
  if (side === 'left') return [0, size[0] / 2, -size[1] / 2, size[1] / 2];
  if (side === 'right') return [-size[0] / 2, 0, -size[1] / 2, size[1] / 2];
  return [-0.3, 0.3, -size[1] / 2, size[1] / 2];
}

/** Whether 95 % of a body's 0.2 m cells lie in 0.1 m cells of the map that deserve to be shown. */
function supported(request: ArrangeRequest, place: Place, side: string): boolean {
  const { level } = request.rooms.find(({ id }) => id === place.room)!;
  const [x0, x1, y0, y1] = body(place.piece, side);
  const [m, n] = [Math.ceil((x1 - x0) / 0.2 - 1e-9), Math.ceil((y1 - y0) / 0.2 - 1e-9)];
  const cells: P[] = [];
  for (let i = 0; i < m; i++)
    for (let j = 0; j < n; j++) {
      const [u, v] = [x0 + ((i + 0.5) * (x1 - x0)) / m, y0 + ((j + 0.5) * (y1 - y0)) / n];
      cells.push(quad(place, u, u, v, v)[0]);
    }
  const middle = (value: number) => (Math.floor(value / 0.1) + 0.5) * 0.1;
  const { doubt } = fieldOf(request.fitted, level, place.piece.height).support(
    cells.map(([x]) => middle(x)),
    cells.map(([, y]) => middle(y)),
  );
  return doubt.filter((value) => value <= 1).length >= 0.95 * cells.length;
}

/** Planned daily dose at a place: the field's 0.1 m cells, each weighed with the floor it shares with the body. */
function planned(request: ArrangeRequest, place: Place): number {
  const { piece } = place;
  const room = request.rooms.find(({ id }) => id === place.room)!;
  const field = fieldOf(request.fitted, room.level, piece.height);
  return piece.uses.reduce((sum, { side, hours }) => {
    const [x0, x1, y0, y1] = body(piece, side);
    const ring = quad(place, x0, x1, y0, y1);
    const upright = Math.abs(place.angle / 90 - Math.round(place.angle / 90)) < 1e-9;
    return sum + hours * (upright ? cellsMean(field, ring) : samplesMean(field, place, [x0, x1, y0, y1]));
  }, 0);
}

type Estimate = ReturnType<typeof fieldOf>;

function valuesAt(field: Estimate, points: readonly P[]): number[] {
  const { mean } = field.predict(
    points.map(([x]) => x),
    points.map(([, y]) => y),
    { variance: false },
  );
  return [...mean].map(Math.exp);
}

function cellsMean(field: Estimate, ring: readonly P[]): number {
  const xs = ring.map(([x]) => x);
  const ys = ring.map(([, y]) => y);
  const [x0, x1, y0, y1] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)];
  const cells: P[] = [];
  const weights: number[] = [];
  for (let i = Math.floor(x0 / 0.1 - 1e-9); i * 0.1 < x1; i++) {
    for (let j = Math.floor(y0 / 0.1 - 1e-9); j * 0.1 < y1; j++) {
      const wide = Math.min(x1, (i + 1) * 0.1) - Math.max(x0, i * 0.1);
      const high = Math.min(y1, (j + 1) * 0.1) - Math.max(y0, j * 0.1);
      if (wide <= 0 || high <= 0) continue;
      cells.push([(i + 0.5) * 0.1, (j + 0.5) * 0.1]);
      weights.push(wide * high);
    }
  }
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  return valuesAt(field, cells).reduce((sum, value, i) => sum + value * weights[i], 0) / total;
}

/** Samples not further apart than 0.05 m, each between the four cell middles round it. */
function samplesMean(field: Estimate, place: Place, [x0, x1, y0, y1]: readonly number[]): number {
  const m = Math.ceil((x1 - x0) / 0.05 - 1e-9);
  const n = Math.ceil((y1 - y0) / 0.05 - 1e-9);
  const points: P[] = [];
  for (let i = 0; i < m; i++)
    for (let j = 0; j < n; j++) {
      const u = x0 + ((i + 0.5) * (x1 - x0)) / m;
      const v = y0 + ((j + 0.5) * (y1 - y0)) / n;
      points.push(quad(place, u, u, v, v)[0]);
    }
  const around = points.flatMap(([x, y]): P[] => {
    const [i, j] = [Math.floor(x / 0.1 - 0.5), Math.floor(y / 0.1 - 0.5)];
    return [0, 1].flatMap((dj) => [0, 1].map((di): P => [(i + di + 0.5) * 0.1, (j + dj + 0.5) * 0.1]));
  });
  const values = valuesAt(field, around);
  const sum = points.reduce((total, [x, y], k) => {
    const [s, t] = [around[4 * k], around[4 * k]].map(
      ([cx, cy], axis) => (axis === 0 ? x - cx : y - cy) / 0.1,
    );
    const [a, b, c, d] = values.slice(4 * k, 4 * k + 4);
    return total + (a * (1 - s) + b * s) * (1 - t) + (c * (1 - s) + d * s) * t;
  }, 0);
  return sum / points.length;
}

/** Every place at the walls of a room, a step apart and flush with the wall's far end. */
function placesOf(request: ArrangeRequest, piece: ArrangePiece, roomId: string): Place[] {
  const { outline } = request.rooms.find(({ id }) => id === roomId)!;
  const places: Place[] = [];
  const mirrors = piece.access.left === piece.access.right ? [false] : [false, true];
  for (let i = 0; i < outline.length; i++) {
    const [a, b] = [outline[i], outline[(i + 1) % outline.length]];
    const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
    const { inward } = holeOf(outline, { wall: i, offset: 0, width: 1 } as ArrangeOpening);
    const offsets: number[] = [];
    for (
      let at = piece.size[0] / 2;
      at < length - piece.size[0] / 2 - 1e-9;
      at = piece.size[0] / 2 + offsets.length * request.step
    )
      offsets.push(at);
    if (length >= piece.size[0] - 1e-9) offsets.push(length - piece.size[0] / 2);
    for (const at of offsets) {
      const foot: P = [a[0] + ((b[0] - a[0]) * at) / length, a[1] + ((b[1] - a[1]) * at) / length];
      const [x, y] = moved(foot, inward, piece.size[1] / 2);
      const angle = (Math.atan2(inward[0], -inward[1]) * 180) / Math.PI;
      for (const mirrored of mirrors) places.push({ piece, room: roomId, x, y, angle, mirrored });
    }
  }
  return places;
}

/** The least planned dose of all pieces together, by trying everything; null where they do not fit. */
export function leastDose(request: ArrangeRequest): number | null {
  const hands = request.pieces.map((piece) => {
    const all = (piece.mayStandIn ?? []).flatMap((id) => placesOf(request, piece, id));
    const found = { piece, room: '', x: piece.at[0], y: piece.at[1], angle: piece.angle };
    const here = request.rooms.find(({ outline }) => winding(outline, piece.at) !== 0);
    if (here && piece.mayStandIn?.includes(here.id))
      all.push({ ...found, room: here.id, mirrored: false }, { ...found, room: here.id, mirrored: true });
    return all
      .map((place) => ({ place, ...broken(request, place) }))
      .filter(({ hard }) => hard.length === 0)
      .map(({ place, preferred }) => ({
        place,
        tidy: preferred.length === 0,
        cost: planned(request, place),
      }));
  });
  const tidy = hands.map((hand) => (hand.some((one) => one.tidy) ? hand.filter((one) => one.tidy) : hand));
  return leastOf(tidy) ?? leastOf(hands);
}

function leastOf(hands: { place: Place; cost: number }[][]): number | null {
  let least: number | null = null;
  const go = (k: number, placed: Place[], cost: number) => {
    if (k === hands.length) {
      if (least === null || cost < least) least = cost;
      return;
    }
    for (const { place, cost: own } of hands[k]) {
      if (!placed.some((other) => clash(other, place))) go(k + 1, [...placed, place], cost + own);
    }
  };
  go(0, [], 0);
  return least;
}
