import { addWire } from './elements';
import { besideWall } from './besideWall';
import { between, logNormal, overLength, uniform } from './latents';
import { NET_CURRENT } from './netCurrent';
import type { Elements } from './elements';
import type { Extent, Slot } from './slots';
import type { Mark } from './question';
import type { Wall } from '../survey';

/**
 * Where along a stretch a current begins: at the corner for |z| under 1 (two in three), else up to the middle of the stretch
 * and more, or beyond it by up to two metres. Metres from the corner inwards.
 */
function beginning(length: number, z: number): number {
  const past = 2 * Math.max(0, Math.abs(z) - 1);
  return z > 0 ? 0.7 * length * (1 - Math.exp(-past)) : -2 * (1 - Math.exp(-past));
}

/** Near the floor or near the ceiling, as wiring and pipes run. */
const runningHeight = (floor: number, ceiling: number, z: number): number =>
  z < 0 ? floor - 0.05 + 0.3 * (1 - 2 * uniform(z)) - 0.15 : ceiling + 0.1 - 0.5 * (2 * uniform(z) - 1);

function addNet(
  elements: Elements,
  a: readonly [number, number, number],
  b: readonly [number, number, number],
  z: Float64Array,
  at: number,
): void {
  const size = logNormal(NET_CURRENT.median, NET_CURRENT.sd, z[at]) * overLength(z[at + 1], z[at + 2]);
  addWire(elements, a[0], a[1], a[2], b[0], b[1], b[2], size * z[at + 1], size * z[at + 2]);
}

/** A net current along a wall. */
export function wallWire(key: string, probability: number, { from, to, floor, ceiling }: Wall): Slot {
  const length = Math.hypot(to[0] - from[0], to[1] - from[1]);
  const [u, v] = [(to[0] - from[0]) / length, (to[1] - from[1]) / length];
  return {
    key,
    of: 'house',
    probability,
    latents: 7,
    write(z, at, elements) {
      const first = beginning(length, z[at + 4]);
      const last = length - beginning(length, z[at + 5]);
      const off = 0.06 * z[at + 6];
      const height = runningHeight(floor, ceiling, z[at + 3]);
      addNet(
        elements,
        [from[0] + first * u - off * v, from[1] + first * v + off * u, height],
        [from[0] + last * u - off * v, from[1] + last * v + off * u, height],
        z,
        at,
      );
    },
  };
}

/** A net current anywhere in a floor or ceiling, as of underfloor pipes. */
export const freeWire = (key: string, probability: number, extent: Extent): Slot => ({
  key,
  of: 'house',
  probability,
  latents: 8,
  write(z, at, elements) {
    const x = between(extent.x0, extent.x1, z[at + 4]);
    const y = between(extent.y0, extent.y1, z[at + 5]);
    const turn = overLength(z[at + 6], z[at + 7]);
    // The same two latents say the bearing and, by their length, how long: two to eight metres.
    const half = 1 + 3 * (1 - Math.exp(-0.5 * (z[at + 6] ** 2 + z[at + 7] ** 2)));
    const [u, v] = [half * turn * z[at + 6], half * turn * z[at + 7]];
    const height = runningHeight(extent.floor, extent.ceiling, z[at + 3]);
    addNet(elements, [x - u, y - v, height], [x + u, y + v, height], z, at);
  },
});

/** A net current up a wall, as of a rising main or a pipe. */
export const riser = (key: string, probability: number, extent: Extent, walls: readonly Wall[]): Slot => ({
  key,
  of: 'house',
  probability,
  latents: 8,
  write(z, at, elements) {
    const [x, y] = besideWall(walls, extent, 0, 0.1, z[at + 3], z[at + 4], z[at + 5]);
    const [low, high] = storeys(extent, z[at + 6], z[at + 7]);
    addNet(elements, [x, y, low], [x, y, high], z, at);
  },
});

/** A rising current where it was marked, within 0.1 m (standard deviation) each way. */
export function markedRiser(key: string, mark: Mark, extent: Extent): Slot {
  const [px, py] = mark.path[0];
  return {
    key,
    of: mark,
    probability: 0.8,
    latents: 7,
    write(z, at, elements) {
      const [x, y] = [px + 0.1 * z[at + 3], py + 0.1 * z[at + 4]];
      const [low, high] = storeys(extent, z[at + 5], z[at + 6]);
      addNet(elements, [x, y, low], [x, y, high], z, at);
    },
  };
}

/** From under the lowest floor to about the highest ceiling. */
const storeys = ({ floor, ceiling }: Extent, low: number, high: number): [number, number] => [
  floor + 0.1 * low - 0.1,
  ceiling + 0.3 * high,
];
