import type { Bits } from './bits';
import type { Grid } from '../../grid/grid';
import type { Point } from '../../geometry/point';

/** What a step to the next cell costs, over a side and over a corner: nearly as 1 to √2 (Borgefors 1986), in whole numbers. */
const SIDE = 5;
const CORNER = 7;

/** Steps from cell to cell: along x and y, and what they cost. */
const STEPS = [-1, 0, 1].flatMap((dj) =>
  [-1, 0, 1].flatMap((di) => (di === 0 && dj === 0 ? [] : [[di, dj, di !== 0 && dj !== 0 ? CORNER : SIDE]])),
);

/** Cells from which one sets out, and how far each lies from where one would like to begin, in cells. */
export interface Start {
  cell: number;
  off: number;
}

/**
 * The least cost of coming to every cell of `open` from some starts, over sides and corners of open cells; −1 where one does
 * not come. One value a cell, row after row. Buckets by cost (Dial 1969).
 */
export function costsFrom(open: Bits, starts: readonly Start[]): Int32Array {
  const { nx, ny } = open;
  const cost = new Int32Array(nx * ny).fill(-1);
  const buckets: number[][] = [];
  const reach = (cell: number, value: number) => {
    if (cost[cell] >= 0 && cost[cell] <= value) return;
    cost[cell] = value;
    (buckets[value] ??= []).push(cell);
  };
  for (const { cell, off } of starts)
    if (isOpen(open, cell % nx, Math.floor(cell / nx))) reach(cell, Math.round(SIDE * off));
  for (let value = 0; value < buckets.length; value++) {
    for (const cell of buckets[value] ?? []) {
      if (cost[cell] !== value) continue;
      const [i, j] = [cell % nx, Math.floor(cell / nx)];
      for (const [di, dj, step] of STEPS)
        if (isOpen(open, i + di, j + dj)) reach(cell + dj * nx + di, value + step);
    }
  }
  return cost;
}

/** The way back from the cheapest cell of `goals` to where it began, as a line without needless corners; null: there is none. */
export function routeTo(open: Bits, grid: Grid, cost: Int32Array, goals: Bits): Point[] | null {
  let cell = -1;
  for (let j = goals.low; j < goals.high; j++) {
    for (let i = 0; i < open.nx; i++) {
      const k = j * open.nx + i;
      if (cost[k] >= 0 && isOpen(goals, i, j) && (cell < 0 || cost[k] < cost[cell])) cell = k;
    }
  }
  if (cell < 0) return null;
  const cells = [cell];
  for (let next = before(open, cost, cell); next >= 0; next = before(open, cost, next)) cells.push(next);
  return pulled(
    open,
    grid,
    cells.reverse().map((k): Point => [k % open.nx, Math.floor(k / open.nx)]),
  );
}

/** The cell one came from; −1 at the start. */
function before(open: Bits, cost: Int32Array, cell: number): number {
  const { nx } = open;
  const [i, j] = [cell % nx, Math.floor(cell / nx)];
  const [di, dj] =
    STEPS.find(
      ([x, y, step]) => isOpen(open, i + x, j + y) && cost[cell + y * nx + x] === cost[cell] - step,
    ) ?? [];
  return di === undefined ? -1 : cell + dj! * nx + di;
}

/** A string along the cells pulled tight: straight from each corner to the farthest cell in sight. */
function pulled(open: Bits, { x0, y0, step }: Grid, cells: readonly Point[]): Point[] {
  const corners: Point[] = [cells[0]];
  for (let from = 0; from < cells.length - 1;) {
    let to = cells.length - 1;
    while (to > from + 1 && !isInSight(open, cells[from], cells[to])) to--;
    corners.push(cells[to]);
    from = to;
  }
  return corners.map(([i, j]): Point => [x0 + (i + 0.5) * step, y0 + (j + 0.5) * step]);
}

function isInSight(open: Bits, [ai, aj]: Point, [bi, bj]: Point): boolean {
  const count = 2 * Math.max(Math.abs(bi - ai), Math.abs(bj - aj));
  for (let k = 1; k < count; k++)
    if (!isOpen(open, Math.round(ai + ((bi - ai) * k) / count), Math.round(aj + ((bj - aj) * k) / count)))
      return false;
  return true;
}

function isOpen({ nx, ny, words, row }: Bits, i: number, j: number): boolean {
  return i >= 0 && i < nx && j >= 0 && j < ny && ((row[j * words + (i >> 5)] >>> (i & 31)) & 1) === 1;
}
