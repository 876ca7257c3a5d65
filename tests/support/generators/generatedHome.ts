import type { MeterSpec } from '../../../src/engine/survey/meter';
import type { Point, Ring } from '../../../src/engine/geometry/point';
import type { Random } from '../../../src/engine/algebra/random';
import type { Sources } from '../../../src/engine/magnetics/fieldOfSources';
import type {
  MarkedSource,
  MethodChoice,
  Survey,
  SurveyReading,
  Wall,
} from '../../../src/engine/mapping/survey';

/** An invented home whose true field is known everywhere, and what a person saw of its sources. */
export interface GeneratedHome {
  seed: number;
  rooms: Ring[];
  /** Sources that can be seen, as somebody marks them. */
  marked: MarkedSource[];
  readings: SurveyReading[];
  /** What really makes the field; empty where no current does. */
  sources: Sources;
  /** The true resultant at plan x, y and height z, µT. */
  truth(x: number, y: number, z: number): number;
}

/** Where readings are taken, metres over the floor; the floor is at 0, the ceiling 2.5 m over it. */
export const READ_AT = 1;
const CEILING = 2.5;

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

export const logNormal = (chance: Random, median: number, sd: number) =>
  median * Math.exp(sd * chance.normal());

/** What a meter shows at these places; each reading is taken `off` metres (standard deviation a side) from where it is noted. */
export function readAt(
  places: readonly Point[],
  truth: GeneratedHome['truth'],
  chance: Random,
  off = 0,
): SurveyReading[] {
  return places.map(([x, y], i) => {
    const [u, v] = off > 0 ? [x + off * chance.normal(), y + off * chance.normal()] : [x, y];
    const shown = truth(u, v, READ_AT) * (1 + NOISE * chance.normal());
    return {
      id: `m${i + 1}`,
      level: 'l1',
      at: [x, y],
      height: READ_AT,
      value: Math.max(0.001, Math.round(shown * 1000) / 1000),
      meter: SURVEY_METER,
      limit: null,
      min: null,
      max: null,
      peak: false,
    };
  });
}

/** The survey of a home, with or without what was seen of its sources. */
export const surveyOf = (
  { readings, marked, rooms }: GeneratedHome,
  method: MethodChoice,
  marks: boolean,
): Survey => ({
  readings,
  sources: marks ? marked : [],
  elevations: { l1: 0 },
  walls: wallsOf(rooms),
  method,
});

/** Every room's walls; a wall between two rooms is drawn by both. */
export const wallsOf = (rooms: readonly Ring[]): Wall[] =>
  rooms.flatMap((room) =>
    room.map((from, i) => ({ from, to: room[(i + 1) % room.length], floor: 0, ceiling: CEILING })),
  );
