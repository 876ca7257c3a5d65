import { zoneOf } from '../../engine/dose/zones';
import type { AssessPiece } from '../../engine/assess';
import type { Piece } from '../home';

/** A piece as the engine judges it: the zone of everybody who uses it, where it stands. */
export function assessPiece({ id, kind, level, at, angle, size, height, uses }: Piece): AssessPiece {
  return {
    id,
    level,
    height,
    uses: uses.map(({ who, side, hours }) => ({ who, hours, zone: zoneOf(kind, { at, angle }, size, side) })),
  };
}
