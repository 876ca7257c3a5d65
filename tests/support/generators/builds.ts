import {
  alongSide,
  coils,
  dipoles,
  line,
  markAppliance,
  markLine,
  wallCurrents,
  wanderingCurrents,
} from './parts';
import { fieldOfSources, type Sources } from '../../../src/engine/magnetics/fieldOfSources';
import { logNormal, readAt, type GeneratedHome } from './generatedHome';
import { random, type Random } from '../../../src/engine/algebra/random';
import { split, spread } from './floorPlan';
import type { LineShape } from './parts';
import type { MarkedSource } from '../../../src/engine/mapping/survey';
import type { Point, Ring } from '../../../src/engine/geometry/point';

type Build = (seed: number, count: number) => GeneratedHome;

/** Ways to build a home with a known field, as unlike each other as the job allows; the seed alone decides each home. */
export const BUILDS = {
  /** An overhead line along one side, net currents along walls, appliances that are dipoles. */
  'along walls': (seed, count) => plain(random(seed), seed, count),
  /** A line at an angle or buried, net currents that wander, appliances that are windings. */
  wandering: (seed, count) => {
    const chance = random(10_000 + seed);
    const { size, rooms } = floor(chance);
    const buried = chance.next() < 0.5;
    const along = alongSide(
      size,
      chance.between(2, 10),
      buried ? -0.8 : chance.between(6, 9),
      chance.below(4),
    );
    const shape: LineShape = {
      ...along,
      bearing: along.bearing + (chance.next() < 0.5 ? -1 : 1) * chance.between(10, 40),
      apart: buried ? 0.06 : chance.between(0.4, 0.8),
      load: logNormal(chance, 35, 0.6),
      net: logNormal(chance, 1.5, 0.8),
    };
    const windings = coils(rooms, chance);
    const sources = {
      conductors: [
        ...line(shape, chance),
        ...wanderingCurrents(rooms, chance),
        ...windings.flatMap(({ conductors }) => conductors),
      ],
      dipoles: [],
      ambient: logNormal(chance, 0.02, 0.4),
    };
    // Nobody sees a buried line.
    const marked = [
      ...(buried ? [] : [markLine(shape, chance)]),
      ...windings.map(({ at }, i) => markAppliance(at, i, chance)),
    ];
    return survey(seed, rooms, sources, marked, chance, count);
  },
  /** A smooth field that no current makes: waves of ln B, 4 to 15 m long. What is marked makes nothing. */
  'no current': (seed, count) => {
    const chance = random(20_000 + seed);
    const { size, rooms } = floor(chance);
    const waves = Array.from({ length: 12 }, () => {
      const [turn, length] = [chance.between(0, 2 * Math.PI), chance.between(4, 15)];
      const k = (2 * Math.PI) / length;
      return {
        u: k * Math.cos(turn),
        v: k * Math.sin(turn),
        at: chance.between(0, 2 * Math.PI),
        size: 0.25 * chance.normal(),
      };
    });
    const middle = Math.log(logNormal(chance, 0.06, 0.6));
    const truth = (x: number, y: number) =>
      Math.exp(waves.reduce((sum, { u, v, at, size }) => sum + size * Math.cos(u * x + v * y + at), middle));
    const marked = [
      markLine({ ...alongSide(size, 5, 7, chance.below(4)), apart: 0.6, load: 0, net: 0 }, chance),
      ...dipoles(rooms, chance).map(({ at }, i) => markAppliance(at, i, chance)),
    ];
    const sources = { conductors: [], dipoles: [], ambient: 0 };
    const readings = readAt(spread(rooms, count, chance), truth, chance);
    return { seed, rooms, marked, readings, sources, truth };
  },
  /** The first build with marks that are wrong: the line on the other side, every appliance one to three metres off. */
  'wrong marks': (seed, count) => {
    const home = plain(random(30_000 + seed), 30_000 + seed, count);
    const chance = random(40_000 + seed);
    const x1 = Math.max(...home.rooms.flat().map(([x]) => x));
    const y1 = Math.max(...home.rooms.flat().map(([, y]) => y));
    const marked = home.marked.map((mark): MarkedSource => {
      if (mark.kind === 'line') return { ...mark, path: mark.path.map(([x, y]): Point => [x1 - x, y1 - y]) };
      const [turn, off] = [chance.between(0, 2 * Math.PI), chance.between(1, 3)];
      return {
        ...mark,
        path: mark.path.map(([x, y]): Point => [x + off * Math.cos(turn), y + off * Math.sin(turn)]),
      };
    });
    return { ...home, seed, marked };
  },
  /** The first build, every reading taken 8 cm from where it is noted. */
  'off by 8 cm': (seed, count) => ({
    ...plain(random(50_000 + seed), 50_000 + seed, count, 0.08 / Math.SQRT2),
    seed,
  }),
} satisfies Record<string, Build>;

export type BuildName = keyof typeof BUILDS;

function plain(chance: Random, seed: number, count: number, off = 0): GeneratedHome {
  const { size, rooms } = floor(chance);
  const shape: LineShape = {
    ...alongSide(size, chance.between(3, 12), chance.between(6, 9), chance.below(4)),
    apart: chance.between(0.4, 0.8),
    load: logNormal(chance, 35, 0.6),
    net: logNormal(chance, 1.5, 0.8),
  };
  const appliances = dipoles(rooms, chance);
  const sources = {
    conductors: [...line(shape, chance), ...wallCurrents(rooms, chance)],
    dipoles: appliances,
    ambient: logNormal(chance, 0.02, 0.4),
  };
  const marked = [markLine(shape, chance), ...appliances.map(({ at }, i) => markAppliance(at, i, chance))];
  return survey(seed, rooms, sources, marked, chance, count, off);
}

function floor(chance: Random): { size: Point; rooms: Ring[] } {
  const size: Point = [chance.between(7, 13), chance.between(6, 10)];
  return { size, rooms: split([0, 0, ...size], chance, 2 + chance.below(2)) };
}

function survey(
  seed: number,
  rooms: Ring[],
  sources: Sources,
  marked: MarkedSource[],
  chance: Random,
  count: number,
  off = 0,
): GeneratedHome {
  const truth = (x: number, y: number, z: number) => fieldOfSources(sources, [x, y, z]);
  const readings = readAt(spread(rooms, count, chance), truth, chance, off);
  return { seed, rooms, marked, readings, sources, truth };
}
