import { moved, quad, shoelace, type P } from './shapes';
import type { ArrangeOpening, ArrangePiece, ArrangeRequest } from '../../../src/engine/arranging/request';

/** A piece put somewhere in a room. */
export interface Place {
  piece: ArrangePiece;
  room: string;
  x: number;
  y: number;
  /** Degrees. */
  angle: number;
  mirrored: boolean;
  /** Number of the wall it was put at; −1 where it is found. */
  wall: number;
}

export const TOL = 0.005;

export function footprint(place: Place, less = 0): P[] {
  const [w, l] = place.piece.size;
  return quad(place, [-w / 2 + less, w / 2 - less, -l / 2 + less, l / 2 - less]);
}

const sides = ({ piece: { access }, mirrored }: Place): [number, number] =>
  mirrored ? [access.right, access.left] : [access.left, access.right];

/** With its access strips. */
export function strips(place: Place, less = 0): P[] {
  const [w, l] = place.piece.size;
  const [plus, minus] = sides(place);
  const { foot } = place.piece.access;
  return quad(place, [-w / 2 - minus + less, w / 2 + plus - less, -l / 2 - foot + less, l / 2 - less]);
}

/** The strips by themselves, those that there are. */
export function eachStrip(place: Place): P[][] {
  const [w, l] = place.piece.size;
  const [plus, minus] = sides(place);
  const { foot } = place.piece.access;
  return [
    ...(plus > 0 ? [quad(place, [w / 2, w / 2 + plus, -l / 2, l / 2])] : []),
    ...(minus > 0 ? [quad(place, [-w / 2 - minus, -w / 2, -l / 2, l / 2])] : []),
    ...(foot > 0 ? [quad(place, [-w / 2, w / 2, -l / 2 - foot, -l / 2])] : []),
  ];
}

/** A hole in a wall of a room, and the way in from it. */
export interface Hole {
  a: P;
  b: P;
  inward: P;
}

export function holeOf(
  outline: readonly P[],
  { wall, offset, width }: Pick<ArrangeOpening, 'wall' | 'offset' | 'width'>,
): Hole {
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

/** The rectangle before a hole. */
export const before = ({ a, b, inward }: Hole, depth: number): P[] => [
  a,
  b,
  moved(b, inward, depth),
  moved(a, inward, depth),
];

/** Every place at the walls of a room, a step apart and flush with the wall's far end. */
export function placesAtWalls(request: ArrangeRequest, piece: ArrangePiece, room: string): Place[] {
  const { outline } = request.rooms.find(({ id }) => id === room)!;
  const places: Place[] = [];
  const mirrors = piece.access.left === piece.access.right ? [false] : [false, true];
  const backs = piece.kind === 'cot' ? [0, 90, -90] : [0];
  for (let wall = 0; wall < outline.length; wall++) {
    const [a, b] = [outline[wall], outline[(wall + 1) % outline.length]];
    const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
    const { inward } = holeOf(outline, { wall, offset: 0, width: 1 });
    for (const back of backs) {
      const [broad, deep] = back === 0 ? piece.size : [piece.size[1], piece.size[0]];
      const offsets: number[] = [];
      for (let at = broad / 2; at < length - broad / 2 - 1e-9; at = broad / 2 + offsets.length * request.step)
        offsets.push(at);
      if (length >= broad - 1e-9) offsets.push(length - broad / 2);
      for (const at of offsets) {
        const foot: P = [a[0] + ((b[0] - a[0]) * at) / length, a[1] + ((b[1] - a[1]) * at) / length];
        const [x, y] = moved(foot, inward, deep / 2);
        const angle = (Math.atan2(inward[0], -inward[1]) * 180) / Math.PI + back;
        for (const mirrored of mirrors) places.push({ piece, room, x, y, angle, mirrored, wall });
      }
    }
  }
  return places;
}
