import { beside } from './floorPlan';
import { logNormal } from './generatedHome';
import { squareCoil } from '../../../src/engine/magnetics/coil';
import type { Conductor } from '../../../src/engine/magnetics/conductor';
import type { Dipole } from '../../../src/engine/magnetics/dipole';
import type { MarkedSource } from '../../../src/engine/mapping/survey';
import type { Place } from '../../../src/engine/magnetics/phasor';
import type { Point, Ring } from '../../../src/engine/geometry/point';
import type { Random } from '../../../src/engine/algebra/random';

export interface LineShape {
  /** Middle wire, plan and height. */
  middle: Place;
  /** Degrees from +x. */
  bearing: number;
  /** Between wires, metres. */
  apart: number;
  load: number;
  net: number;
}

/** Three phases side by side, 80 m long, with a load and a net current that returns elsewhere. */
export function line({ middle, bearing, apart, load, net }: LineShape, chance: Random): Conductor[] {
  const turn = (bearing * Math.PI) / 180;
  const [u, v] = [Math.cos(turn), Math.sin(turn)];
  const wire = (off: number, amperes: number, degrees: number): Conductor => ({
    from: [middle[0] - off * v - 40 * u, middle[1] + off * u - 40 * v, middle[2]],
    to: [middle[0] - off * v + 40 * u, middle[1] + off * u + 40 * v, middle[2]],
    amperes,
    degrees,
    endless: false,
  });
  return [
    ...[-1, 0, 1].map((place, i) => wire(place * apart, load, 120 * i)),
    wire(0, net, chance.between(0, 360)),
  ];
}

/** The middle of a line `away` metres from one side of a plan that begins at (0, 0), and the bearing along that side. */
export function alongSide(
  [width, depth]: Point,
  away: number,
  height: number,
  side: number,
): { middle: Place; bearing: number } {
  const places: Place[] = [
    [width / 2, -away, height],
    [width + away, depth / 2, height],
    [width / 2, depth + away, height],
    [-away, depth / 2, height],
  ];
  return { middle: places[side], bearing: side % 2 === 0 ? 0 : 90 };
}

/** A line as a person marks it: ten metres of it, some 0.2 m off in plan and height. */
export function markLine({ middle, bearing }: LineShape, chance: Random): MarkedSource {
  const turn = (bearing * Math.PI) / 180;
  const [u, v] = [5 * Math.cos(turn), 5 * Math.sin(turn)];
  const [x, y] = [middle[0] + 0.2 * chance.normal(), middle[1] + 0.2 * chance.normal()];
  return {
    id: 'g0',
    kind: 'line',
    level: 'l1',
    path: [
      [x - u, y - v],
      [x + u, y + v],
    ],
    height: middle[2] + 0.2 * chance.normal(),
    falloff: 'fit',
    origin: 'outside',
  };
}

/** Net currents of wiring and pipes along one to three walls, near the floor or the ceiling. */
export function wallCurrents(rooms: readonly Ring[], chance: Random): Conductor[] {
  return Array.from({ length: 1 + chance.below(3) }, () => {
    const room = rooms[chance.below(rooms.length)];
    const wall = chance.below(4);
    const height = nearFloorOrCeiling(chance);
    const [a, b] = [room[wall], room[(wall + 1) % 4]];
    return wire([...a, height], [...b, height], logNormal(chance, 0.6, 0.8), chance.between(0, 360));
  });
}

/** One or two net currents that wander: three to five straight parts through the home, with a rise or a fall on the way. */
export function wanderingCurrents(rooms: readonly Ring[], chance: Random): Conductor[] {
  return Array.from({ length: 1 + chance.below(2) }, () => {
    const [amperes, degrees] = [logNormal(chance, 0.8, 0.7), chance.between(0, 360)];
    let height = nearFloorOrCeiling(chance);
    let [x, y] = beside(rooms, chance);
    const parts: Conductor[] = [];
    const go = (to: Place) => {
      parts.push(wire([x, y, height], to, amperes, degrees));
      [x, y, height] = to;
    };
    const turns = 3 + chance.below(3);
    for (let i = 0; i < turns; i++) {
      const [nextX, nextY] = beside(rooms, chance);
      if (i === 1) go([x, y, nearFloorOrCeiling(chance)]);
      else go(chance.next() < 0.5 ? [nextX, y, height] : [x, nextY, height]);
    }
    return parts;
  }).flat();
}

const nearFloorOrCeiling = (chance: Random): number =>
  chance.next() < 0.5 ? chance.between(-0.3, 0.2) : chance.between(2.3, 2.7);

const wire = (from: Place, to: Place, amperes: number, degrees: number): Conductor => ({
  from,
  to,
  amperes,
  degrees,
  endless: false,
});

/** Two to five appliances by walls, as dipoles. */
export function dipoles(rooms: readonly Ring[], chance: Random): Dipole[] {
  return Array.from({ length: 2 + chance.below(4) }, () => {
    const size = logNormal(chance, 0.35, 0.9);
    const direction = [chance.normal(), chance.normal(), chance.normal()] as const;
    const length = Math.hypot(...direction);
    return {
      at: [...beside(rooms, chance), chance.between(0.2, 1.6)] as const,
      moment: direction.map((part) => (part * size) / length) as unknown as Place,
      degrees: chance.between(0, 360),
    };
  });
}

/** Two to five appliances by walls, as square windings 0.1 to 0.35 m wide; each with its middle. */
export function coils(rooms: readonly Ring[], chance: Random): { at: Place; conductors: Conductor[] }[] {
  return Array.from({ length: 2 + chance.below(4) }, () => {
    const at: Place = [...beside(rooms, chance), chance.between(0.2, 1.6)];
    const side = chance.between(0.1, 0.35);
    const conductors = squareCoil({
      at,
      side,
      ampereTurns: logNormal(chance, 0.35, 0.9) / side ** 2,
      lean: chance.between(0, 90),
      bearing: chance.between(0, 360),
      degrees: chance.between(0, 360),
    });
    return { at, conductors };
  });
}

/** An appliance as a person marks it, some 5 cm off in plan and 10 cm in height. */
export const markAppliance = ([x, y, z]: Place, i: number, chance: Random): MarkedSource => ({
  id: `g${i + 1}`,
  kind: 'point',
  level: 'l1',
  path: [[x + 0.05 * chance.normal(), y + 0.05 * chance.normal()]],
  height: z + 0.1 * chance.normal(),
  falloff: 3,
  origin: 'house',
});
