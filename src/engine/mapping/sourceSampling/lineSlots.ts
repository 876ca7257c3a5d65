import { addWire } from './elements';
import { logNormal, overLength, uniform } from './latents';
import { NET_CURRENT } from './netCurrent';
import type { Elements } from './elements';
import type { Extent, Slot } from './slots';
import type { Mark } from './question';

/** Net current of a street line, A (overhead neutrals and mains return part of the load elsewhere): the project's choice. */
const LINE_NET = { median: 1.5, sd: 1 };

/** Load of a line times the distance between its wires, A·m: 35 A in wires 0.1 to 0.8 m apart. The project's choice. */
const LINE_PAIR = { median: 15, sd: 1.2 };

/** The two wires of a pair stand this far apart, metres; only current × distance matters from where readings are taken. */
const APART = 0.5;

/** How far a line goes on, metres: from within a home the field of what is farther off is small and even. */
const BEYOND = 40;

type Path = readonly (readonly [number, number, number])[];

/**
 * A line as wires: a net current along the path, and a balanced load as two pairs of opposed wires, beside and above each
 * other, of phases of their own (a flat, an upright and a trefoil arrangement are all sums of two such pairs). Latents from
 * `at`: three each for net, beside, above: ln of size and a phase by two.
 */
function writeLine(
  path: Path,
  net: { median: number; sd: number },
  pair: { median: number; sd: number },
  z: Float64Array,
  at: number,
  elements: Elements,
): void {
  const phasor = (k: number, { median, sd }: { median: number; sd: number }): [number, number] => {
    const size = logNormal(median, sd, z[k]) * overLength(z[k + 1], z[k + 2]);
    return [size * z[k + 1], size * z[k + 2]];
  };
  const [netRe, netIm] = phasor(at, net);
  const [besideRe, besideIm] = phasor(at + 3, pair).map((moment) => moment / APART);
  const [aboveRe, aboveIm] = phasor(at + 6, { ...pair, median: pair.median / 2 }).map((m) => m / APART);
  for (let i = 1; i < path.length; i++) {
    const [a, b] = [path[i - 1], path[i]];
    const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
    if (length === 0) continue;
    const u = (-(b[1] - a[1]) / length) * (APART / 2);
    const v = ((b[0] - a[0]) / length) * (APART / 2);
    const h = APART / 2;
    addWire(elements, a[0], a[1], a[2], b[0], b[1], b[2], netRe, netIm);
    addWire(elements, a[0] + u, a[1] + v, a[2], b[0] + u, b[1] + v, b[2], besideRe, besideIm);
    addWire(elements, a[0] - u, a[1] - v, a[2], b[0] - u, b[1] - v, b[2], -besideRe, -besideIm);
    addWire(elements, a[0], a[1], a[2] + h, b[0], b[1], b[2] + h, aboveRe, aboveIm);
    addWire(elements, a[0], a[1], a[2] - h, b[0], b[1], b[2] - h, -aboveRe, -aboveIm);
  }
}

/** A line where it was marked, within 0.3 m (standard deviation) each way. */
export function markedLine(key: string, mark: Mark): Slot {
  const { path, z: height, passes } = mark;
  const ends = passes ? goingOn(path) : path;
  const net = passes ? LINE_NET : NET_CURRENT;
  const pair = passes ? LINE_PAIR : { median: 0.1, sd: 1 };
  const [off, up] = passes ? [0.3, 0.3] : [0.1, 0.3];
  return {
    key,
    of: mark,
    probability: 0.8,
    latents: 12,
    write(z, at, elements) {
      const moved: Path = ends.map(([x, y]) => [
        x + off * z[at + 9],
        y + off * z[at + 10],
        height + up * z[at + 11],
      ]);
      writeLine(moved, net, pair, z, at, elements);
    },
  };
}

function goingOn(path: Mark['path']): [number, number][] {
  const beyond = (from: readonly [number, number], to: readonly [number, number]): [number, number] => {
    const length = Math.max(1e-9, Math.hypot(to[0] - from[0], to[1] - from[1]));
    return [to[0] + (BEYOND * (to[0] - from[0])) / length, to[1] + (BEYOND * (to[1] - from[1])) / length];
  };
  const last = path.length - 1;
  return [
    beyond(path[1], path[0]),
    ...path.slice(1, last).map(([x, y]): [number, number] => [x, y]),
    beyond(path[last - 1], path[last]),
  ];
}

/** A street line that nobody marked: on any side, along it or at an angle, overhead (two in three) or buried. */
export const streetLine = (key: string, probability: number, extent: Extent): Slot => ({
  key,
  of: 'street',
  probability,
  latents: 12,
  write(z, at, elements) {
    const side = Math.min(3, Math.floor(4 * uniform(z[at + 9])));
    const place = 4 * uniform(z[at + 9]) - side;
    // One latent says the side and, within it, how far off; another overhead or buried and how high.
    const away = 1.5 + 13 * place;
    const upright = uniform(z[at + 10]);
    const height =
      upright < 1 / 3 ? extent.floor - 0.4 - 1.8 * upright : extent.floor + 5 + 6 * (upright - 1 / 3);
    const lean = (Math.PI / 9) * z[at + 11];
    const bearing = (side % 2 === 0 ? 0 : Math.PI / 2) + lean;
    const x = side === 1 ? extent.x1 + away : side === 3 ? extent.x0 - away : (extent.x0 + extent.x1) / 2;
    const y = side === 0 ? extent.y0 - away : side === 2 ? extent.y1 + away : (extent.y0 + extent.y1) / 2;
    const [u, v] = [BEYOND * Math.cos(bearing), BEYOND * Math.sin(bearing)];
    const pair = upright < 1 / 3 ? { median: 4, sd: 1 } : LINE_PAIR;
    writeLine(
      [
        [x - u, y - v, height],
        [x + u, y + v, height],
      ],
      LINE_NET,
      pair,
      z,
      at,
      elements,
    );
  },
});
