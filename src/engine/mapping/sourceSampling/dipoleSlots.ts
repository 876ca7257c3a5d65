import { addDipole } from './elements';
import { besideWall } from './besideWall';
import { between, logNormal, overLength } from './latents';
import type { Elements } from './elements';
import type { Extent, Slot } from './slots';
import type { Mark } from './question';
import type { Wall } from '../survey';

/**
 * Moment of an appliance that is on, A·m²: 0.4 gives 0.3 µT half a metre beside it and 0.04 µT a metre beside it, twice that
 * on its axis; the spread holds the hundredfold range that surveys of household appliances found (Gauger 1985). The
 * project's choice.
 */
const MOMENT = { median: 0.4, sd: 1 };

/** Six latents from `at`: ln of size, direction by three, phase by two. */
function addAppliance(
  elements: Elements,
  x: number,
  y: number,
  height: number,
  z: Float64Array,
  at: number,
): void {
  const size = logNormal(MOMENT.median, MOMENT.sd, z[at]) * overLength(z[at + 1], z[at + 2], z[at + 3]);
  const turn = overLength(z[at + 4], z[at + 5]);
  addDipole(
    elements,
    x,
    y,
    height,
    size * z[at + 1],
    size * z[at + 2],
    size * z[at + 3],
    turn * z[at + 4],
    turn * z[at + 5],
  );
}

/** An appliance where it was marked: its winding lies within some 0.1 m of there, in height 0.15 m. */
export function appliance(key: string, mark: Mark): Slot {
  const [px, py] = mark.path[0];
  return {
    key,
    of: mark,
    probability: 0.7,
    latents: 9,
    write(z, at, elements) {
      addAppliance(elements, px + 0.08 * z[at + 6], py + 0.08 * z[at + 7], mark.z + 0.12 * z[at + 8], z, at);
    },
  };
}

/** An appliance nobody marked: half of them by a wall, on either side of it, else anywhere. */
export const hiddenAppliance = (
  key: string,
  probability: number,
  extent: Extent,
  walls: readonly Wall[],
): Slot => ({
  key,
  of: 'house',
  probability,
  latents: 11,
  write(z, at, elements) {
    const [x, y] =
      z[at + 10] < 0
        ? besideWall(walls, extent, 0.05, 0.6, z[at + 6], z[at + 7], z[at + 9])
        : [between(extent.x0, extent.x1, z[at + 6]), between(extent.y0, extent.y1, z[at + 7])];
    const height = between(extent.floor, extent.floor + 2, z[at + 8]);
    addAppliance(elements, x, y, height, z, at);
  },
});
