import { boxOf, type Box } from './box';
import type { ArrangePiece } from './request';
import type { Pose } from '../geometry/pose';

/** A side that a piece may turn to a wall. */
export type WallSide = 'head' | 'left' | 'right';

/** A piece standing somewhere in a room. */
export interface Stand {
  piece: ArrangePiece;
  room: string;
  pose: Pose;
  /** Its left and right access strips have changed sides. */
  mirrored: boolean;
  /** The floor it covers. */
  foot: Box;
  /** The same with its access strips. */
  reach: Box;
}

/** A piece put somewhere, with the floor it takes. Its strips may lie on either side, so as to suit the room. */
export function standOf(piece: ArrangePiece, room: string, pose: Pose, mirrored: boolean): Stand {
  const [w, l] = [piece.size[0] / 2, piece.size[1] / 2];
  const foot = boxOf(pose, { x0: -w, x1: w, y0: -l, y1: l });
  return { piece, room, pose, mirrored, foot, reach: reachOf(piece, pose, mirrored) };
}

/** The same piece at the same place with its strips on the other sides; it covers the same floor. */
export const otherWay = (stand: Stand): Stand => ({
  ...stand,
  mirrored: !stand.mirrored,
  reach: reachOf(stand.piece, stand.pose, !stand.mirrored),
});

function reachOf({ size, access: { left, right, foot } }: ArrangePiece, pose: Pose, mirrored: boolean): Box {
  const [w, l] = [size[0] / 2, size[1] / 2];
  const [plus, minus] = mirrored ? [right, left] : [left, right];
  return boxOf(pose, { x0: -w - minus, x1: w + plus, y0: -l - foot, y1: l });
}

/** Whether changing sides makes another stand of a piece. */
export const hasSides = ({ access }: ArrangePiece): boolean => access.left !== access.right;

/** The floor beside a piece from which somebody uses it: its access strips, each by itself. */
export function usedSides({ piece, pose, mirrored }: Stand): Box[] {
  const [w, l] = [piece.size[0] / 2, piece.size[1] / 2];
  const { left, right, foot } = piece.access;
  const [plus, minus] = mirrored ? [right, left] : [left, right];
  return [
    { x0: w, x1: w + plus, y0: -l, y1: l },
    { x0: -w - minus, x1: -w, y0: -l, y1: l },
    { x0: -w, x1: w, y0: -l - foot, y1: -l },
  ]
    .filter(({ x0, x1, y0, y1 }) => x1 > x0 && y1 > y0)
    .map((extent) => boxOf(pose, extent));
}
