import { bandOf } from '../../engine/contours/thresholds';
import { containsEvenOdd } from '../../engine/geometry/polygon';
import { bilinear } from '../../engine/grid/grid';
import { HALF_90 } from '../../engine/mapping/interval';
import { REASONS } from '../../engine/mapping/support';
import type { FieldAt } from '../../engine/dose/fieldAt';
import type { AssessRequest, LevelPicture } from '../../engine/assess';
import type { Id, Point } from '../../home/home';
import type { Probe } from '../editor';

const nothing = (at: Point, reason: Probe['reason']): Probe => ({
  at,
  value: null,
  low: null,
  high: null,
  supported: false,
  reason,
  nearest: null,
  band: null,
});

function said(
  at: Point,
  mean: number,
  variance: number | null,
  reason: Probe['reason'],
  nearest: number | null,
): Probe {
  const value = Math.exp(mean);
  const spread = variance === null ? null : Math.exp(HALF_90 * Math.sqrt(Math.max(0, variance)));
  return {
    at,
    value,
    low: spread === null ? null : value / spread,
    high: spread === null ? null : value * spread,
    supported: reason === null,
    reason,
    nearest,
    band: bandOf(value),
  };
}

/** What the drawn picture says at a place: cheap enough for every move of a pointer. */
export function probePicture(
  picture: LevelPicture | undefined,
  request: AssessRequest | null,
  readings: readonly Point[],
  at: Point,
): Probe {
  const nearest =
    readings.length > 0 ? Math.min(...readings.map((p) => Math.hypot(p[0] - at[0], p[1] - at[1]))) : null;
  const level = request?.levels.find(({ id }) => id === picture?.level);
  if (!picture) return { ...nothing(at, null), nearest };
  if (!level || !containsEvenOdd(level.outline, at)) return { ...nothing(at, 'outside'), nearest };
  const { grid, mean, variance, doubt, reason } = picture;
  const i = Math.min(grid.nx - 1, Math.max(0, Math.floor((at[0] - grid.x0) / grid.step)));
  const j = Math.min(grid.ny - 1, Math.max(0, Math.floor((at[1] - grid.y0) / grid.step)));
  const doubtful = bilinear(grid, doubt, at) > 1;
  return said(
    at,
    bilinear(grid, mean, at),
    variance && bilinear(grid, variance, at),
    doubtful ? REASONS[reason[j * grid.nx + i]!] || 'wide' : null,
    nearest,
  );
}

/** What the model itself says at a place and height, on the plan or off it. */
export function probeField(fieldAt: FieldAt, level: Id, height: number, at: Point): Probe {
  const field = fieldAt(level, height);
  const { mean, variance } = field.predict([at[0]], [at[1]], { variance: true });
  const { doubt, reason } = field.support([at[0]], [at[1]]);
  const why = doubt[0]! > 1 ? REASONS[reason[0]!] || 'wide' : null;
  return said(at, mean[0]!, variance![0]!, why, field.nearest(at));
}
