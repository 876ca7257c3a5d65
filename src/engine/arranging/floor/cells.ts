import { noBits, setRun, type Bits } from './bits';
import type { Box } from '../box';
import type { Grid } from '../../grid/grid';
import type { Ring } from '../../geometry/point';

// Distances of cells to walls are often those asked for, to the rounding.
const ROUNDING = 1e-6;

/** Marks the cells whose middles are nearer to a box than `reach`, metres. */
export function markNear(bits: Bits, { x0, y0, step }: Grid, box: Box, reach: number): void {
  const { x, y, ux, uy, hx, hy } = box;
  const near = reach - ROUNDING;
  const tall = Math.abs(ux) * hy + Math.abs(uy) * hx + near;
  const wide = Math.abs(ux) * hx + Math.abs(uy) * hy + near;
  const upright = ux === 0 || uy === 0 || Math.abs(ux * uy) < 1e-12;
  const [halfWide, halfTall] = [wide - near, tall - near];
  const first = Math.ceil((y - tall - y0) / step - 0.5);
  const last = Math.floor((y + tall - y0) / step - 0.5);
  for (let j = Math.max(0, first); j <= Math.min(bits.ny - 1, last); j++) {
    const dy = y0 + (j + 0.5) * step - y;
    if (upright) {
      const over = Math.max(0, Math.abs(dy) - halfTall);
      if (over >= near) continue;
      const half = halfWide + Math.sqrt(near * near - over * over);
      setRun(bits, j, Math.ceil((x - half - x0) / step - 0.5), Math.floor((x + half - x0) / step - 0.5));
      continue;
    }
    // What is near a box is convex: one run a row.
    let from = Infinity;
    let to = -Infinity;
    const right = Math.floor((x + wide - x0) / step - 0.5);
    for (let i = Math.ceil((x - wide - x0) / step - 0.5); i <= right; i++) {
      const dx = x0 + (i + 0.5) * step - x;
      const px = Math.max(0, Math.abs(dx * ux + dy * uy) - hx);
      const py = Math.max(0, Math.abs(dy * ux - dx * uy) - hy);
      if (px * px + py * py >= near * near) continue;
      from = Math.min(from, i);
      to = i;
    }
    setRun(bits, j, from, to);
  }
}

/** Cells whose middles lie in a box, its edge included. */
export function cellsIn(grid: Grid, box: Box): Bits {
  const bits = noBits(grid.nx, grid.ny);
  markNear(bits, grid, box, 2 * ROUNDING);
  return bits;
}

/** Cells whose middles lie inside a ring: between the odd and the even crossings of its walls with each row. */
export function cellsInside(grid: Grid, ring: Ring): Bits {
  const bits = noBits(grid.nx, grid.ny);
  for (let j = 0; j < grid.ny; j++) {
    const y = grid.y0 + (j + 0.5) * grid.step;
    const crossings: number[] = [];
    ring.forEach(([ax, ay], i) => {
      const [bx, by] = ring[(i + 1) % ring.length];
      if (ay > y !== by > y) crossings.push(ax + ((y - ay) * (bx - ax)) / (by - ay));
    });
    crossings.sort((a, b) => a - b);
    for (let k = 0; k + 1 < crossings.length; k += 2) {
      const cell = (x: number) => (x - grid.x0) / grid.step - 0.5;
      setRun(bits, j, Math.ceil(cell(crossings[k])), Math.floor(cell(crossings[k + 1])));
    }
  }
  return bits;
}
