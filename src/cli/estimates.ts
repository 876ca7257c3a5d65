import { cellCentres, gridOver } from '../engine/grid/grid';
import { bounds, containsEvenOdd } from '../engine/geometry/polygon';
import { fieldOf } from '../engine/mapping/field';
import type { AssessRequest } from '../engine/assess';
import { HALF_90 } from '../engine/mapping/interval';
import { REACH, REASONS } from '../engine/mapping/support';
import { reachOn } from '../engine/reachOn';
import type { Point } from '../engine/geometry/point';
import type { FittedSurvey } from '../engine/mapping/fitSurvey';
import type { AskedPoint } from './options';

/** The estimate at one place, µT: median and 90 % interval of the true field. */
export interface PointEstimate {
  at: [number, number];
  level: string;
  height: number;
  value: number;
  low: number;
  high: number;
  supported: boolean;
  reason: (typeof REASONS)[number];
  /** Metres to the nearest reading of the level; null without any. */
  nearest: number | null;
}

/** Estimates at places of one level and height, in the order given. */
function estimate(
  fitted: FittedSurvey,
  { level, height, reach }: { level: string; height: number; reach: (p: Point) => number },
  xs: Float64Array,
  ys: Float64Array,
) {
  const field = fieldOf(fitted, level, height);
  const { mean, variance } = field.predict(xs, ys, { variance: true });
  const { reason } = field.support(
    xs,
    ys,
    Float64Array.from(xs, (x, i) => reach([x, ys[i]!])),
    variance,
  );
  return Array.from(mean, (ln, i): PointEstimate => {
    const half = HALF_90 * Math.sqrt(variance![i]!);
    const why = REASONS[reason[i]!]!;
    return {
      at: [xs[i]!, ys[i]!],
      level,
      height,
      value: Math.exp(ln),
      low: Math.exp(ln - half),
      high: Math.exp(ln + half),
      supported: why === null,
      reason: why,
      nearest: field.nearest([xs[i]!, ys[i]!]),
    };
  });
}

/** Estimates at the places asked for, each at its own level and height or at the map's. */
export function pointEstimates(
  fitted: FittedSurvey,
  points: readonly AskedPoint[],
  request: Pick<AssessRequest, 'levels' | 'rooms'>,
): PointEstimate[] {
  const map = request.levels[0]!;
  return points.flatMap(({ x, y, level, height }) => {
    const plane = { level: level ?? map.id, height: height ?? map.height };
    const reach = reachOn(request, plane.level);
    return estimate(fitted, { ...plane, reach }, Float64Array.of(x), Float64Array.of(y));
  });
}

/** The estimate of a whole level at the middles of square cells on its floor: [x, y, value, low, high]. */
export function gridEstimates(
  fitted: FittedSurvey,
  { id, height, outline }: AssessRequest['levels'][number],
  step: number,
): [number, number, number, number, number][] {
  if (outline.length === 0) return [];
  const { xs, ys } = cellCentres(gridOver(bounds(outline.flat()), step));
  const inside = [...xs.keys()].filter((i) => containsEvenOdd(outline, [xs[i]!, ys[i]!]));
  const pick = (values: Float64Array) => Float64Array.from(inside, (i) => values[i]!);
  const plane = { level: id, height, reach: () => REACH };
  return estimate(fitted, plane, pick(xs), pick(ys)).map(({ at, value, low, high }) => [
    ...at,
    value,
    low,
    high,
  ]);
}
