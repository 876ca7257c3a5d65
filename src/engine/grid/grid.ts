import type { Bounds } from '../geometry/polygon';
import type { Point } from '../geometry/point';

/**
 * Square cells on the world lattice: x0, y0 (the lower left corner) are multiples of the step, so that two grids of one
 * step share their cells. Cell (i, j) has its centre at x0 + (i + ½)·step, y0 + (j + ½)·step and its value at index
 * j·nx + i. Metres.
 */
export interface Grid {
  x0: number;
  y0: number;
  step: number;
  nx: number;
  ny: number;
}

// 3 × 0.1 is 0.30000000000000004: corners are rounded to a nanometre so that they read as they are written.
const nanometre = (x: number): number => Math.round(x * 1e9) / 1e9;

/** The grid whose cells cover the bounds, with `pad` metres more on every side. */
export function gridOver(bounds: Bounds, step: number, pad = 0): Grid {
  const first = (low: number) => Math.floor((low - pad) / step + 1e-9);
  const last = (high: number) => Math.ceil((high + pad) / step - 1e-9);
  const [i0, j0] = [first(bounds.x0), first(bounds.y0)];
  return {
    x0: nanometre(i0 * step),
    y0: nanometre(j0 * step),
    step,
    nx: Math.max(1, last(bounds.x1) - i0),
    ny: Math.max(1, last(bounds.y1) - j0),
  };
}

/** Coordinates of every cell's centre, nx·ny each, row after row from the lowest. */
export function cellCentres({ x0, y0, step, nx, ny }: Grid): { xs: Float64Array; ys: Float64Array } {
  const xs = new Float64Array(nx * ny);
  const ys = new Float64Array(nx * ny);
  for (let j = 0, at = 0; j < ny; j++) {
    for (let i = 0; i < nx; i++, at++) {
      xs[at] = x0 + (i + 0.5) * step;
      ys[at] = y0 + (j + 0.5) * step;
    }
  }
  return { xs, ys };
}

/** The value at p between the four cell centres round it; beyond the outermost centres, that of the nearest edge. */
export function bilinear({ x0, y0, step, nx, ny }: Grid, values: ArrayLike<number>, [x, y]: Point): number {
  const u = Math.min(nx - 1, Math.max(0, (x - x0) / step - 0.5));
  const v = Math.min(ny - 1, Math.max(0, (y - y0) / step - 0.5));
  const i = Math.min(Math.floor(u), Math.max(0, nx - 2));
  const j = Math.min(Math.floor(v), Math.max(0, ny - 2));
  const right = Math.min(i + 1, nx - 1);
  const above = Math.min(j + 1, ny - 1);
  const [s, t] = [u - i, v - j];
  const low = values[j * nx + i] * (1 - s) + values[j * nx + right] * s;
  const high = values[above * nx + i] * (1 - s) + values[above * nx + right] * s;
  return low * (1 - t) + high * t;
}
