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

/** What a cell costs that nobody may enter, and one that nobody has come to. */
const SHUT = -1;
const UNREACHED = 2 ** 30;

/** Cells from which one sets out, and how far each lies from where one would like to begin, in cells. */
export interface Start {
  cell: number;
  off: number;
}

/**
 * Finds ways over sides and corners of open cells from some starts to the nearest of some goals: a line of the middles of cells
 * without needless corners, in plan coordinates; null where there is none. The way costs least by steps of 5 and 7; what is
 * nearer to the goals is tried first (A*: Hart, Nilsson & Raphael 1968), so that an open floor is crossed in no time.
 */
export function routesFrom(
  open: Bits,
  grid: Grid,
  starts: readonly Start[],
): (goals: Bits) => Point[] | null {
  const { nx, ny } = open;
  // A rim of shut cells, so that no step leaves the floor.
  const wide = nx + 2;
  const rimmed = (i: number, j: number) => (j + 1) * wide + i + 1;
  const floor = new Int32Array(wide * (ny + 2)).fill(SHUT);
  for (let j = open.low; j < open.high; j++)
    for (let i = 0; i < nx; i++) if (isOpen(open, i, j)) floor[rimmed(i, j)] = UNREACHED;
  const steps = STEPS.map(([di, dj, price]) => ({ by: dj * wide + di, price }));

  return (goals) => {
    const box = extentOf(goals);
    if (!box) return null;
    const cost = floor.slice();
    const buckets: number[][] = [];
    const reach = (cell: number, value: number) => {
      if (cost[cell] <= value) return;
      cost[cell] = value;
      (buckets[value + leastFrom((cell % wide) - 1, Math.floor(cell / wide) - 1, box)] ??= []).push(cell);
    };
    for (const { cell, off } of starts)
      reach(rimmed(cell % nx, Math.floor(cell / nx)), Math.round(SIDE * off));
    for (let total = 0; total < buckets.length; total++) {
      const bucket = buckets[total];
      // Last come, first tried: of ways that may be as short, one is followed to its end.
      for (let cell = bucket?.pop(); cell !== undefined; cell = bucket.pop()) {
        const [i, j] = [(cell % wide) - 1, Math.floor(cell / wide) - 1];
        if (isOpen(goals, i, j)) return pulled(open, grid, wayTo(cell));
        // One that has been come to more cheaply since is there again with less, and was taken then.
        for (const { by, price } of steps) reach(cell + by, cost[cell] + price);
      }
    }
    return null;

    /** The cells one came over, from the start. */
    function wayTo(goal: number): Point[] {
      const cells: Point[] = [];
      for (let cell: number | undefined = goal; cell !== undefined;) {
        cells.push([(cell % wide) - 1, Math.floor(cell / wide) - 1]);
        const here: number = cell;
        const step = steps.find(
          ({ by, price }) => cost[here + by] >= 0 && cost[here + by] === cost[here] - price,
        );
        cell = step && here + step.by;
      }
      return cells.reverse();
    }
  };
}

interface Extent {
  i0: number;
  i1: number;
  j0: number;
  j1: number;
}

/** The rectangle of cells round all that are set; null for none. */
function extentOf(bits: Bits): Extent | null {
  const box = { i0: Infinity, i1: -Infinity, j0: Infinity, j1: -Infinity };
  for (let j = bits.low; j < bits.high; j++) {
    for (let i = 0; i < bits.nx; i++) {
      if (!isOpen(bits, i, j)) continue;
      box.i0 = Math.min(box.i0, i);
      box.i1 = Math.max(box.i1, i);
      box.j0 = Math.min(box.j0, j);
      box.j1 = j;
    }
  }
  if (box.i1 < 0) return null;
  return box;
}

/** The least that a way from a cell into a rectangle can cost. */
function leastFrom(i: number, j: number, { i0, i1, j0, j1 }: Extent): number {
  const dx = Math.max(0, i0 - i, i - i1);
  const dy = Math.max(0, j0 - j, j - j1);
  return SIDE * Math.max(dx, dy) + (CORNER - SIDE) * Math.min(dx, dy);
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
