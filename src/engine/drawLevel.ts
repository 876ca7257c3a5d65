import { BAND_EDGES, HALF_STEPS } from './contours/thresholds';
import { area, bounds } from './geometry/polygon';
import { cellCentres, gridOver, type Grid } from './grid/grid';
import { contoursOf, fieldContoursOf } from './contours/bands';
import type { AssessLevel, LevelPicture } from './assess';
import type { Field } from './mapping/field';
import type { FieldAt } from './dose/fieldAt';
import type { Point } from './geometry/point';

/** Whole picture, with everything that deserves to be looked at; or what follows a finger: bands alone, coarser. */
export type Detail =
  | {
      variance: true;
      target: number;
      /** Metres a reading reaches at a place. */ reach: (p: Point) => number;
    }
  | { variance: false };

// Bands follow a finger at twice the cell: a quarter of the work, and lines that settle by less than a hand's breadth.
const COARSER = 2;

/**
 * The picture of one level: ln B over a grid of its floor, bands as contours, and where the map is not supported. Without
 * variance only the mean and the band edges are worked out, nothing is called unsupported. `progress` is told the share
 * done, 0…1.
 */
export function drawLevel(
  fieldAt: FieldAt,
  level: AssessLevel,
  detail: Detail,
  progress?: (share: number) => void,
): LevelPicture {
  const step = detail.variance ? level.step : level.step * COARSER;
  // One cell more on every side, so that no floor lies beyond the outermost cell centres.
  const grid = gridOver(bounds(level.outline.flat()), step, step);
  const { xs, ys } = cellCentres(grid);
  const field = fieldAt(level.id, level.height);
  if (!detail.variance) {
    const { mean } = field.predict(xs, ys, { variance: false });
    const cells = xs.length;
    return {
      level: level.id,
      grid,
      mean,
      variance: null,
      doubt: new Float64Array(cells),
      reason: new Uint8Array(cells),
      contours: fieldContoursOf(grid, mean, BAND_EDGES),
      unsupported: [],
    };
  }
  const { mean, variance } = inStrips(field, xs, ys, progress);
  const reach = Float64Array.from(xs, (x, i) => detail.reach([x, ys[i]]));
  const { doubt, reason } = field.support(xs, ys, reach, variance);
  const thresholds = [...new Set([...BAND_EDGES, ...HALF_STEPS, detail.target])].filter((value) => value > 0);
  return {
    level: level.id,
    grid,
    mean,
    variance,
    doubt,
    reason,
    contours: fieldContoursOf(grid, mean, thresholds),
    unsupported: unsupportedRings(grid, doubt),
  };
}

// With thousands of readings a picture takes seconds, which must be seen to pass.
const STRIP = 1024;

/** Mean and variance at all cells, a strip of them at a time. */
function inStrips(field: Field, xs: Float64Array, ys: Float64Array, progress?: (share: number) => void) {
  const mean = new Float64Array(xs.length);
  const variance = new Float64Array(xs.length);
  for (let first = 0; first < xs.length; first += STRIP) {
    const end = Math.min(first + STRIP, xs.length);
    const strip = field.predict(xs.subarray(first, end), ys.subarray(first, end), { variance: true });
    mean.set(strip.mean, first);
    variance.set(strip.variance!, first);
    progress?.(end / xs.length);
  }
  return { mean, variance };
}

// Ground smaller than a hand is not worth a hatch, nor a hole in one, m².
const CRUMB = 0.05;

/** Doubt may be infinite (no reading at all); contours want numbers, and above 1 no difference is drawn. */
function unsupportedRings(grid: Grid, doubt: Float64Array) {
  const capped = doubt.map((value) => Math.min(2, value));
  return contoursOf(grid, capped, [1])
    .flatMap(({ polygons }) => polygons.flat())
    .filter((ring) => area(ring) >= CRUMB);
}
