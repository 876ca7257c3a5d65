import { BAND_EDGES } from '../contours/thresholds';
import { contoursOf, fieldContoursOf, type Contour } from '../contours/bands';
import type { Grid } from '../grid/grid';
import type { Ring } from '../geometry/point';

/** The outline of the places where a value is known, and not NaN: outlines and holes, to be read even-odd. */
export function outlineOfKnown(grid: Grid, values: Float64Array): Ring[] {
  const known = values.map((value) => (Number.isNaN(value) ? 0 : 1));
  return ringsAt(grid, known, 0.5);
}

/** The outline of the places at or under a value; where none is known it is taken as twice as high. */
export function outlineUnder(grid: Grid, values: Float64Array, most: number): Ring[] {
  const low = values.map((value) => -(Number.isNaN(value) ? 2 * most : value));
  return ringsAt(grid, low, -most);
}

function ringsAt(grid: Grid, values: Float64Array, threshold: number): Ring[] {
  const [{ polygons }] = contoursOf(grid, values, [threshold]);
  return polygons.flat();
}

/**
 * The bands of a mean field, µT, known at some places of a grid: to be cut to the outline of what is known, beyond which its
 * edge is carried on. Nothing where none is known.
 */
export function bandsOf(grid: Grid, field: Float64Array): Contour[] {
  const ln = field.map(Math.log);
  const least = ln.reduce((low, value) => (value < low ? value : low), Infinity);
  if (least === Infinity) return [];
  // The outline reaches half a cell beyond what is known, and its corners a whole one.
  const filled = carriedOn(grid, carriedOn(grid, ln)).map((value) => (Number.isNaN(value) ? least : value));
  return fieldContoursOf(grid, filled, BAND_EDGES).filter(({ polygons }) => polygons.length > 0);
}

/** Values with each unknown cell beside known ones at their mean. */
function carriedOn({ nx, ny }: Grid, values: Float64Array): Float64Array {
  return values.map((value, k) => {
    if (!Number.isNaN(value)) return value;
    const [i, j] = [k % nx, Math.floor(k / nx)];
    let [sum, count] = [0, 0];
    for (let y = Math.max(0, j - 1); y <= Math.min(ny - 1, j + 1); y++) {
      for (let x = Math.max(0, i - 1); x <= Math.min(nx - 1, i + 1); x++) {
        const beside = values[y * nx + x];
        if (Number.isNaN(beside)) continue;
        sum += beside;
        count += 1;
      }
    }
    return count > 0 ? sum / count : NaN;
  });
}
