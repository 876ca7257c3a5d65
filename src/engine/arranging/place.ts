import type { Point } from '../geometry/point';

/** Where a piece stands: the middle of its footprint, and how far it is turned, degrees. */
export interface Place {
  level: string;
  at: Point;
  angle: number;
}

/** A piece put somewhere. */
export interface Put extends Place {
  id: string;
}

// Less than this nobody would call a move: metres, degrees.
const SAME_PLACE = 0.01;
const SAME_ANGLE = 0.5;

/** Whether a piece that stands at one place has moved, seen from another. */
export function isElsewhere(now: Place, then: Place): boolean {
  const turn = Math.abs(((now.angle - then.angle + 540) % 360) - 180);
  const shift = Math.hypot(now.at[0] - then.at[0], now.at[1] - then.at[1]);
  return now.level !== then.level || shift > SAME_PLACE || turn > SAME_ANGLE;
}
