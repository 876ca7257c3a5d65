import { bilinear, cellCentres, gridOver, type Grid } from '../grid/grid';
import { bounds } from '../geometry/polygon';
import { SUPPORTED_SHARE } from '../dose/isDrawn';
import { HALF_90 } from '../mapping/interval';
import { lerp, type Point, type Ring } from '../geometry/point';
import type { Field } from '../mapping/field';
import type { Zone } from '../dose/zones';

/** The field over one room at one height, ready to be averaged over many zones. */
export interface Ground {
  grid: Grid;
  /** µT per cell: the median, or the 95th percentile where the plan is cautious. */
  values: Float64Array;
  /** Integral of `values` from the grid's corner to each cell corner, µT·m²: (nx + 1) × (ny + 1). */
  summed: Float64Array;
  /** How much the map may be doubted, on coarser cells: where a bed stands that changes slowly. */
  doubtGrid: Grid;
  doubt: Float64Array;
  /** No cell of it is doubted. */
  clear: boolean;
}

/** How much of a room the map speaks for. */
type Doubt = Pick<Ground, 'doubtGrid' | 'doubt' | 'clear'>;

/** Cells of the planner's field, and samples of a zone that lies askew, metres. */
const CELL = 0.1;
const SAMPLE = 0.05;

/** Cells on which it is known whether the map speaks for a place, metres. */
const DOUBT_CELL = 0.2;

/** Room for what stands half in a wall, metres. */
const PAD = 0.2;

/** Grounds of a field live as long as it does: one map is asked about many times. */
const known = new WeakMap<Field, Map<string, Ground>>();

/**
 * The field over one room, µT, with how much of each place is supported; `cautious` takes its 95th percentile for its median.
 * What was found before of the same field is given again.
 */
export function groundOf(field: Field, outline: Ring, cautious: boolean): Ground {
  const made = known.get(field) ?? new Map<string, Ground>();
  known.set(field, made);
  const key = `${cautious} ${outline.join(' ')}`;
  const ground = made.get(key) ?? predicted(field, outline, cautious);
  made.set(key, ground);
  return ground;
}

function predicted(field: Field, outline: Ring, cautious: boolean): Ground {
  const box = bounds(outline);
  const grid = gridOver(box, CELL, PAD);
  const { xs, ys } = cellCentres(grid);
  const { mean, variance } = field.predict(xs, ys, { variance: cautious });
  const values = mean.map((ln, i) => Math.exp(ln + (variance ? HALF_90 * Math.sqrt(variance[i]) : 0)));
  return { grid, values, summed: summedArea(grid, values), ...doubtOf(field, outline) };
}

const doubts = new WeakMap<Field, Map<string, Doubt>>();

/** How much of one room the map speaks for: all that `supports` asks. What was found before of the same field is given again. */
export function doubtOf(field: Field, outline: Ring): Doubt {
  const made = doubts.get(field) ?? new Map<string, Doubt>();
  doubts.set(field, made);
  const key = outline.join(' ');
  const doubt = made.get(key) ?? doubtOver(field, outline);
  made.set(key, doubt);
  return doubt;
}

function doubtOver(field: Field, outline: Ring): Doubt {
  const doubtGrid = gridOver(bounds(outline), DOUBT_CELL, PAD);
  const { xs, ys } = cellCentres(doubtGrid);
  const { doubt } = field.support(xs, ys);
  return { doubtGrid, doubt, clear: doubt.every((value) => value <= 1) };
}

/** Cumulative sums (Crow 1984): any upright rectangle's integral from four of them. */
function summedArea({ nx, ny, step }: Grid, values: Float64Array): Float64Array {
  const summed = new Float64Array((nx + 1) * (ny + 1));
  for (let j = 0; j < ny; j++) {
    let row = 0;
    for (let i = 0; i < nx; i++) {
      row += values[j * nx + i] * step * step;
      summed[(j + 1) * (nx + 1) + i + 1] = summed[j * (nx + 1) + i + 1] + row;
    }
  }
  return summed;
}

/** Mean of the field over a zone, µT: exact over the cells for an upright zone, by samples for one that lies askew. */
export function meanOver(ground: Ground, [a, b, c, d]: Ring): number {
  const upright = (a[0] === b[0] || a[1] === b[1]) && (b[0] === c[0] || b[1] === c[1]);
  return upright ? meanUpright(ground, a, c) : meanAskew(ground, a, b, d);
}

function meanUpright({ grid, summed }: Ground, [ax, ay]: Point, [cx, cy]: Point): number {
  const x0 = inCells(Math.min(ax, cx), grid.x0, grid.step, grid.nx);
  const x1 = inCells(Math.max(ax, cx), grid.x0, grid.step, grid.nx);
  const y0 = inCells(Math.min(ay, cy), grid.y0, grid.step, grid.ny);
  const y1 = inCells(Math.max(ay, cy), grid.y0, grid.step, grid.ny);
  const at = (x: number, y: number) => cumulative(summed, grid.nx + 1, x, y);
  return (at(x1, y1) - at(x0, y1) - at(x1, y0) + at(x0, y0)) / ((x1 - x0) * (y1 - y0) * grid.step ** 2);
}

const inCells = (value: number, origin: number, step: number, count: number): number =>
  Math.min(count, Math.max(0, (value - origin) / step));

/** The integral is bilinear within a cell, so between four corners of a cell it is exact. */
function cumulative(summed: Float64Array, width: number, x: number, y: number): number {
  const i = Math.min(Math.floor(x), width - 2);
  const j = Math.floor(y);
  const [s, t] = [x - i, y - j];
  const low = summed[j * width + i] * (1 - s) + summed[j * width + i + 1] * s;
  if (t === 0) return low;
  const high = summed[(j + 1) * width + i] * (1 - s) + summed[(j + 1) * width + i + 1] * s;
  return low * (1 - t) + high * t;
}

function meanAskew({ grid, values }: Ground, corner: Point, across: Point, along: Point): number {
  const steps = (end: Point) =>
    // A body of 0.6 m has twelve samples across, whatever the rounding of its corners.
    Math.max(1, Math.ceil(Math.hypot(end[0] - corner[0], end[1] - corner[1]) / SAMPLE - 1e-9));
  const [m, n] = [steps(across), steps(along)];
  let sum = 0;
  for (let i = 0; i < m; i++) {
    const foot = lerp(corner, across, (i + 0.5) / m);
    for (let j = 0; j < n; j++) {
      const t = (j + 0.5) / n;
      sum += bilinear(grid, values, [
        foot[0] + (along[0] - corner[0]) * t,
        foot[1] + (along[1] - corner[1]) * t,
      ]);
    }
  }
  return sum / (m * n);
}

/** Whether the map speaks for a zone: nearly all of it lies on cells that deserve to be shown; null where it lies beside them. */
export function supports(
  { doubtGrid: grid, doubt, clear }: Doubt,
  { cells }: Pick<Zone, 'cells'>,
): boolean | null {
  const beside = cells.some(
    ([x, y]) =>
      x < grid.x0 || y < grid.y0 || x > grid.x0 + grid.nx * grid.step || y > grid.y0 + grid.ny * grid.step,
  );
  if (beside) return null;
  if (clear) return true;
  const place = (value: number, origin: number, count: number) =>
    Math.min(count - 1, Math.max(0, Math.floor((value - origin) / grid.step)));
  const drawn = cells.filter(
    ([x, y]) => doubt[place(y, grid.y0, grid.ny) * grid.nx + place(x, grid.x0, grid.nx)] <= 1,
  ).length;
  return drawn >= SUPPORTED_SHARE * cells.length;
}
