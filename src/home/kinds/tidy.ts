import type { Point } from '../home';

/**
 * Places are kept to a tenth of a millimetre: finer than any tape, and coarse enough that moving a thing there and back
 * gives the same home, to the byte.
 */
export const tidyLength = (metres: number): number => Math.round(metres * 1e4) / 1e4 + 0;

export const tidy = (point: Point): Point => [tidyLength(point[0]), tidyLength(point[1])];

/** An angle in 0 … 360, kept to a thousandth of a degree; counted in whole ones, so that four quarter turns are none. */
export function tidyAngle(degrees: number): number {
  const thousandths = Math.round(degrees * 1e3) % 360e3;
  return ((thousandths + 360e3) % 360e3) / 1e3;
}
