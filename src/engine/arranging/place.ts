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
