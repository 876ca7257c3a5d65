import type { Conductor } from '../../src/engine/magnetics/conductor';
import { squareCoil } from '../../src/engine/magnetics/coil';
import type { Dipole } from '../../src/engine/magnetics/dipole';
import { fieldOfSources, type Sources } from '../../src/engine/magnetics/fieldOfSources';
import { random, type Random } from '../../src/engine/algebra/random';
import { beside, split, spread } from './generators/floorPlan';
import type { Point, Ring } from '../../src/engine/geometry/point';
import type { MeterSpec } from '../../src/engine/survey/meter';
import type { SurveyReading } from '../../src/engine/mapping/survey';

/** An invented home whose true field is known everywhere, because it is made of sources. */
export interface KnownHome {
  seed: number;
  rooms: Ring[];
  sources: Sources;
  readings: SurveyReading[];
  /** The true resultant at plan x, y and height z, µT. */
  truth(x: number, y: number, z: number): number;
}

/** A standard deviation of 3 %: an expanded uncertainty of 6 %, k = 2. */
const SURVEY_METER: MeterSpec = {
  percent: 6,
  absolute: 0,
  coverage: 'k2',
  resolution: 0.001,
  range: [0.001, 2000],
  gain: 1,
  offset: 0,
};

const NOISE = 0.03;
const HEIGHT = 1;

/**
 * A home of up to eight rooms with a line outside along a wall or at an angle to it, net currents along one to three
 * walls, two to five appliances and an ambient field; `count` readings 1.0 m up, spread as a careful person spreads them,
 * each with 3 % noise. The same seed gives the same home.
 */
export function knownHome(seed: number, count = 36): KnownHome {
  const chance = random(seed);
  const [width, depth] = [chance.between(7, 13), chance.between(6, 10)];
  const rooms = split([0, 0, width, depth], chance, 2 + chance.below(2));
  const sources = {
    conductors: [
      ...line(width, depth, chance),
      ...netCurrents(rooms, chance),
      ...(chance.next() < 0.5 ? motor(rooms, chance) : []),
    ],
    dipoles: appliances(rooms, chance),
    ambient: logNormal(chance, 0.02, 0.4),
  };
  const truth = (x: number, y: number, z: number) => fieldOfSources(sources, [x, y, z]);
  const readings = spread(rooms, count, chance).map(([x, y], i): SurveyReading => {
    const shown = truth(x, y, HEIGHT) * (1 + NOISE * chance.normal());
    const value = Math.max(0.001, Math.round(shown * 1000) / 1000);
    const steady = { limit: null, min: null, max: null, peak: false };
    return {
      id: `m${i + 1}`,
      level: 'l1',
      at: [x, y],
      height: HEIGHT,
      value,
      meter: SURVEY_METER,
      ...steady,
    };
  });
  return { seed, rooms, sources, readings, truth };
}

const logNormal = (chance: Random, median: number, sd: number) => median * Math.exp(sd * chance.normal());

/** Three phases 80 m long, overhead or buried, with a load and a net current that returns elsewhere. */
function line(width: number, depth: number, chance: Random): Conductor[] {
  const buried = chance.next() < 0.3;
  const away = chance.between(buried ? 2 : 3, 12);
  const height = buried ? -0.8 : chance.between(6, 9);
  const apart = buried ? 0.06 : chance.between(0.4, 0.8);
  const load = logNormal(chance, 35, 0.6);
  const net = logNormal(chance, 1.5, 0.8);
  const lean = chance.next() < 0.5 ? 0 : (chance.between(-35, 35) * Math.PI) / 180;
  const side = chance.below(4);
  const middle: Point = [
    [width / 2, -away],
    [width + away, depth / 2],
    [width / 2, depth + away],
    [-away, depth / 2],
  ][side] as unknown as Point;
  const bearing = (side % 2 === 0 ? 0 : Math.PI / 2) + lean;
  const [u, v]: [Point, Point] = [
    [Math.cos(bearing), Math.sin(bearing)],
    [-Math.sin(bearing), Math.cos(bearing)],
  ];
  const wire = (off: number, amperes: number, degrees: number): Conductor => ({
    from: [middle[0] + off * v[0] - 40 * u[0], middle[1] + off * v[1] - 40 * u[1], height],
    to: [middle[0] + off * v[0] + 40 * u[0], middle[1] + off * v[1] + 40 * u[1], height],
    amperes,
    degrees,
    endless: false,
  });
  return [
    ...[-1, 0, 1].map((place, i) => wire(place * apart, load, 120 * i)),
    wire(0, net, chance.between(0, 360)),
  ];
}

/** Currents in wiring and pipes along walls, near the floor or the ceiling. */
function netCurrents(rooms: readonly Ring[], chance: Random): Conductor[] {
  return Array.from({ length: 1 + chance.below(3) }, () => {
    const room = rooms[chance.below(rooms.length)];
    const wall = chance.below(4);
    const height = chance.next() < 0.5 ? chance.between(-0.3, 0.2) : chance.between(2.3, 2.7);
    const [a, b] = [room[wall], room[(wall + 1) % 4]];
    return {
      from: [a[0], a[1], height],
      to: [b[0], b[1], height],
      amperes: logNormal(chance, 0.6, 0.8),
      degrees: chance.between(0, 360),
      endless: false,
    };
  });
}

function appliances(rooms: readonly Ring[], chance: Random): Dipole[] {
  return Array.from({ length: 2 + chance.below(4) }, () => {
    const size = logNormal(chance, 0.35, 0.9);
    const direction = [chance.normal(), chance.normal(), chance.normal()] as const;
    const length = Math.hypot(...direction);
    const moment = direction.map((part) => (part * size) / length) as unknown as Dipole['moment'];
    return {
      at: [...beside(rooms, chance), chance.between(0.2, 1.6)] as const,
      moment,
      degrees: chance.between(0, 360),
    };
  });
}

/** A motor whose winding is too wide to be a dipole close by. */
function motor(rooms: readonly Ring[], chance: Random): Conductor[] {
  return squareCoil({
    at: [...beside(rooms, chance), chance.between(0.2, 0.8)],
    side: 0.3,
    ampereTurns: logNormal(chance, 5, 0.6),
    lean: chance.between(0, 90),
    bearing: chance.between(0, 360),
    degrees: chance.between(0, 360),
  });
}
