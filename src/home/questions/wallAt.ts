import { toPlan } from '../../engine/geometry/pose';
import type { Home, Id, Piece, Point } from '../home';

/** A piece put somewhere in a room. */
interface PutIn {
  id: Id;
  room: Id;
  at: Point;
  angle: number;
}

/** The wall of its room that a piece stands at: which, and where it faces seen from inside, degrees clockwise from north. */
export interface WallAt {
  wall: number;
  bearing: number;
  window: boolean;
  door: boolean;
}

// A skirting's width: what stands this near stands at the wall, as the planner's own rule has it. Metres.
const AT_WALL = 0.105;

/** Which sides of a kind may be the one at the wall, the likeliest first. */
const SIDES: Record<Piece['kind'], readonly Side[]> = {
  bed: ['head'],
  cot: ['head', 'left', 'right'],
  desk: ['head', 'left', 'right'],
  seat: ['head', 'left', 'right'],
  other: ['head', 'left', 'right'],
};
type Side = 'head' | 'left' | 'right';

/** The wall behind the head or back of a piece, or beside it where its side stands there; null where it stands at none. */
export function wallAt(home: Home, put: PutIn): WallAt | null {
  const piece = home.pieces[put.id];
  const room = home.rooms[put.room];
  if (!piece || !room) return null;
  const [w, l] = [piece.size[0] / 2, piece.size[1] / 2];
  const ends: Record<Side, [Point, Point]> = {
    head: [
      [-w, l],
      [w, l],
    ],
    left: [
      [-w, -l],
      [-w, l],
    ],
    right: [
      [w, -l],
      [w, l],
    ],
  };
  for (const side of SIDES[piece.kind]) {
    const edge = ends[side].map((p) => toPlan(put, p));
    const wall = room.outline.findIndex((a, i) => {
      const b = room.outline[(i + 1) % room.outline.length]!;
      return edge.every((p) => isAlong(p, a, b));
    });
    if (wall < 0) continue;
    const here = Object.values(home.openings).filter((one) => one.room === put.room && one.wall === wall);
    const [from, to] = [middleOf(edge), put.at];
    return {
      wall,
      bearing: (Math.atan2(from[0] - to[0], from[1] - to[1]) * 180) / Math.PI + home.north,
      window: here.some(({ kind }) => kind === 'window'),
      door: here.some(({ kind }) => kind !== 'window'),
    };
  }
  return null;
}

const middleOf = ([a, b]: readonly Point[]): Point => [(a![0] + b![0]) / 2, (a![1] + b![1]) / 2];

/** Whether a point lies at a wall from `a` to `b`. */
function isAlong([x, y]: Point, [ax, ay]: Point, [bx, by]: Point): boolean {
  const length = Math.hypot(bx - ax, by - ay);
  const along = ((x - ax) * (bx - ax) + (y - ay) * (by - ay)) / length;
  const off = Math.abs((x - ax) * (by - ay) - (y - ay) * (bx - ax)) / length;
  return off <= AT_WALL && along >= -AT_WALL && along <= length + AT_WALL;
}
