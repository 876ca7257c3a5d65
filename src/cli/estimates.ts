import { cellCentres, gridOver } from '../engine/grid/grid';
import { bounds, containsEvenOdd } from '../engine/geometry/polygon';
import { fieldOf } from '../engine/mapping/field';
import type { AssessRequest } from '../engine/assess';
import { HALF_90 } from '../engine/mapping/interval';
import { REASONS } from '../engine/mapping/support';
import type { FittedSurvey } from '../engine/mapping/fitSurvey';
import type { AskedPoint } from './options';

/** The estimate at one place, µT: median and 90 % interval of the true field. */
export interface PointEstimate {
  at: [number, number];
  value: number;
  low: number;
  high: number;
  supported: boolean;
  reason: (typeof REASONS)[number];
}

/** Estimates at places of one level and height, in the order given. */
function estimate(fitted: FittedSurvey, level: string, height: number, xs: Float64Array, ys: Float64Array) {
  const field = fieldOf(fitted, level, height);
  const { mean, variance } = field.predict(xs, ys, { variance: true });
  const { reason } = field.support(xs, ys);
  return Array.from(mean, (ln, i): PointEstimate => {
    const half = HALF_90 * Math.sqrt(variance![i]!);
    const why = REASONS[reason[i]!]!;
    return {
      at: [xs[i]!, ys[i]!],
      value: Math.exp(ln),
      low: Math.exp(ln - half),
      high: Math.exp(ln + half),
      supported: why === null,
      reason: why,
    };
  });
}

/** Estimates at the places asked for, each at its own level and height or at the map's. */
export function pointEstimates(
  fitted: FittedSurvey,
  points: readonly AskedPoint[],
  map: { level: string; height: number },
): PointEstimate[] {
  return points.flatMap(({ x, y, level, height }) =>
    estimate(fitted, level ?? map.level, height ?? map.height, Float64Array.of(x), Float64Array.of(y)),
  );
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
  return estimate(fitted, id, height, pick(xs), pick(ys)).map(({ at, value, low, high }) => [
    ...at,
    value,
    low,
    high,
  ]);
}
