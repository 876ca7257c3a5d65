import { REASONS } from './support';
import type { Plane } from './plane';
import type { Point } from '../geometry/point';
import type { Support } from './support';

/** Standard deviations by which the map may miss a limit's pull: past the limit itself by as much again. The project's choice. */
const MISS = 4;

/** Metres round a contradicted limit within which nothing is shown: the project's choice. */
const AROUND = 1;

const WIDE = REASONS.indexOf('wide');

/**
 * Places read past an end of the range where the estimates (ln B, one a place of the plane) stand on the wrong side of the
 * limit all the same, by more than a factor of two at the height of the reading, and more at another height.
 */
export function contradicted({ places, noise }: Plane, estimates: ArrayLike<number>): Point[] {
  return places.flatMap(({ limited, ln, x, y }, i): Point[] => {
    if (!limited) return [];
    const short = limited === 'above' ? ln - estimates[i] : estimates[i] - ln;
    return short > MISS * Math.sqrt(noise[i]) ? [[x, y]] : [];
  });
}

/** The support with doubt over 1 about each of the points, least at a metre: what a meter could not show is not drawn away. */
export function doubtBeside(
  { doubt, reason }: Support,
  points: readonly Point[],
  xs: ArrayLike<number>,
  ys: ArrayLike<number>,
): Support {
  for (const [x, y] of points)
    for (let i = 0; i < doubt.length; i++) {
      const beside = 2 - Math.hypot(xs[i] - x, ys[i] - y) / AROUND;
      if (beside <= doubt[i]) continue;
      doubt[i] = beside;
      if (beside > 1 && reason[i] === 0) reason[i] = WIDE;
    }
  return { doubt, reason };
}
