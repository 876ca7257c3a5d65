import { contours } from 'd3-contour';
import type { Grid } from '../grid/grid';
import type { Point, Ring } from '../geometry/point';

/** The area at or above a value, in plan coordinates: polygons, each an outer ring followed by its holes. */
export interface Contour {
  value: number;
  polygons: Ring[][];
}

/**
 * The areas of the grid's rectangle where `values` (one per cell, none NaN) reach each threshold, ascending, taken as
 * linear between cell centres and level beyond the outermost. A threshold that no cell reaches gives no polygon.
 */
export function contoursOf(grid: Grid, values: Float64Array, thresholds: readonly number[]): Contour[] {
  const padded = repeatEdges(grid, values);
  const { least, most } = range(values);
  const size: [number, number] = [grid.nx + 2, grid.ny + 2];
  const marching = contours().size(size);
  return [...thresholds]
    .sort((a, b) => a - b)
    .map((value) => {
      if (value > most) return { value, polygons: [] };
      if (value <= least) return { value, polygons: [[wholeOf(grid)]] };
      // The library reads any indexed numbers; its types know arrays only.
      const { coordinates } = marching.contour(padded as unknown as number[], value);
      return { value, polygons: toPlan(grid, coordinates as unknown as Point[][][]) };
    });
}

/**
 * The areas where a field reaches each threshold, µT, from ln of the field per cell: between cell centres the field is
 * taken as linear in its logarithm.
 */
export function fieldContoursOf(grid: Grid, lnField: Float64Array, thresholds: readonly number[]): Contour[] {
  const ascending = [...thresholds].sort((a, b) => a - b);
  return contoursOf(grid, lnField, ascending.map(Math.log)).map(({ polygons }, i) => ({
    value: ascending[i],
    polygons,
  }));
}

/**
 * A frame of one cell round the grid that repeats its outermost cells. Marching squares takes what lies beyond as low and
 * cuts every corner by half a cell; in the frame the contours run straight out, and clipping takes the cut corners away.
 */
function repeatEdges({ nx, ny }: Grid, values: Float64Array): Float64Array {
  const padded = new Float64Array((nx + 2) * (ny + 2));
  for (let j = 0; j < ny + 2; j++) {
    const row = Math.min(ny - 1, Math.max(0, j - 1)) * nx;
    const to = j * (nx + 2);
    padded[to] = values[row];
    padded.set(values.subarray(row, row + nx), to + 1);
    padded[to + nx + 1] = values[row + nx - 1];
  }
  return padded;
}

function range(values: Float64Array): { least: number; most: number } {
  let least = Infinity;
  let most = -Infinity;
  for (const value of values) {
    if (value < least) least = value;
    if (value > most) most = value;
  }
  return { least, most };
}

function wholeOf({ x0, y0, step, nx, ny }: Grid): Ring {
  const [x1, y1] = [x0 + nx * step, y0 + ny * step];
  return [
    [x0, y0],
    [x1, y0],
    [x1, y1],
    [x0, y1],
  ];
}

/** From padded cells to metres, clipped to the grid's rectangle: contours cross its edge square, so clamping is exact. */
function toPlan({ x0, y0, step, nx, ny }: Grid, polygons: readonly Point[][][]): Ring[][] {
  const placed = (ring: Point[]): Ring => {
    const points: Point[] = [];
    // The library repeats the first corner at the end.
    for (let i = 1; i < ring.length; i++) {
      const x = x0 + Math.min(nx, Math.max(0, ring[i][0] - 1)) * step;
      const y = y0 + Math.min(ny, Math.max(0, ring[i][1] - 1)) * step;
      const last = points[points.length - 1];
      if (!last || last[0] !== x || last[1] !== y) points.push([x, y]);
    }
    return points;
  };
  return polygons
    .map((polygon) => polygon.map(placed))
    .filter(([outer]) => outer.length >= 3)
    .map(([outer, ...holes]) => [outer, ...holes.filter((hole) => hole.length >= 3)]);
}
