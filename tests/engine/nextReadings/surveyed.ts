import { COMMON_METER } from '../../../src/engine/survey/meter';
import { fieldsOf } from '../../../src/engine/dose/fieldAt';
import { fitSurvey } from '../../../src/engine/mapping/fitSurvey';
import { gaussianField } from '../../support/gaussianField';
import { random } from '../../../src/engine/algebra/random';
import { reading, UNMARKED } from '../../support/readings';
import type { AssessRoom } from '../../../src/engine/assess';
import type { FittedSurvey } from '../../../src/engine/mapping/fitSurvey';
import type { NextRequest } from '../../../src/engine/nextReadings/request';
import type { Point, Ring } from '../../../src/engine/geometry/point';
import type { SurveyReading } from '../../../src/engine/mapping/survey';
import type { Variogram } from '../../../src/engine/mapping/variogram';

/** 3 % of what is shown, one standard deviation. */
export const METER = {
  ...COMMON_METER,
  percent: 6,
  absolute: 0,
  coverage: 'k2',
  resolution: 1e-4,
  range: [1e-6, 1e6],
} as const;

const VARIOGRAM: Variogram = { model: 'exponential', nugget: 0.01, sill: 0.4, range: 2.5 };

/** Readings at some places of a Gaussian field. */
export function readAt(
  places: readonly Point[],
  seed: number,
  rest: Partial<SurveyReading> = {},
): SurveyReading[] {
  const chance = random(seed);
  const lns = gaussianField(
    places.map(([x]) => x),
    places.map(([, y]) => y),
    VARIOGRAM,
    chance,
  );
  return lns.map((ln, i) =>
    reading(i + 1, places[i], Math.exp(ln - 2) * (1 + 0.03 * chance.normal()), { meter: METER, ...rest }),
  );
}

/** Kriging of readings with the variogram they were drawn from, which stays as it is when others are added. */
export function kriged(readings: readonly SurveyReading[]): FittedSurvey {
  const result = fitSurvey({ ...UNMARKED, readings, method: 'kriging' });
  if (!result.ok) throw new Error(result.problem.kind);
  return { ...result.fitted, variogram: VARIOGRAM };
}

export const box = (x0: number, y0: number, x1: number, y1: number): Ring => [
  [x0, y0],
  [x1, y0],
  [x1, y1],
  [x0, y1],
];

export const room = (id: string, outline: Ring, rest: Partial<AssessRoom> = {}): AssessRoom => ({
  id,
  level: 'l1',
  use: 'sleeping',
  outline,
  without: [],
  ...rest,
});

/** The map of all rooms asked, nothing else. */
export const asked = (
  fitted: FittedSurvey,
  rooms: readonly AssessRoom[],
  rest: Partial<NextRequest> = {},
): NextRequest => ({
  fitted,
  rooms,
  fixtures: [],
  meter: METER,
  height: 1,
  floor: rooms.map(({ id }) => id),
  aims: [],
  count: 5,
  ...rest,
});

/** Places drawn anywhere in a box, 0.2 m off its walls. */
export function scattered(
  count: number,
  [x0, y0, x1, y1]: [number, number, number, number],
  seed: number,
): Point[] {
  const chance = random(seed);
  return Array.from({ length: count }, (): Point => [
    chance.between(x0 + 0.2, x1 - 0.2),
    chance.between(y0 + 0.2, y1 - 0.2),
  ]);
}

/** Variance of a weighted sum of ln B, as a survey has it. */
export function varianceOf(
  fitted: FittedSurvey,
  height: number,
  { xs, ys, weights }: { xs: ArrayLike<number>; ys: ArrayLike<number>; weights: ArrayLike<number> },
): number {
  const [{ covariance }] = fieldsOf(fitted)('l1', height).draws({ xs, ys });
  const m = weights.length;
  return covariance.reduce((sum, c, at) => sum + c * weights[Math.floor(at / m)] * weights[at % m], 0);
}
