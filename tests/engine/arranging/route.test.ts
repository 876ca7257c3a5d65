import { expect, test } from 'vitest';
import { routesFrom } from '../../../src/engine/arranging/floor/route';
import { noBits, setRun, type Bits } from '../../../src/engine/arranging/floor/bits';
import { random } from '../../../src/engine/algebra/random';

const grid = { x0: 0, y0: 0, step: 0.05, nx: 45, ny: 37 };

const isSet = ({ words, row }: Bits, i: number, j: number) =>
  ((row[j * words + (i >> 5)]! >>> (i & 31)) & 1) === 1;

/** Floor with blocks standing about. */
function cluttered(seed: number): Bits {
  const { next } = random(seed);
  const open = noBits(grid.nx, grid.ny);
  for (let j = 1; j < grid.ny - 1; j++) setRun(open, j, 1, grid.nx - 2);
  for (let k = 0; k < 26; k++) {
    const [i0, j0] = [Math.floor(next() * grid.nx), Math.floor(next() * grid.ny)];
    const [wide, tall] = [1 + Math.floor(next() * 12), 1 + Math.floor(next() * 8)];
    for (let j = j0; j < Math.min(grid.ny, j0 + tall); j++)
      for (let i = i0; i < Math.min(grid.nx, i0 + wide); i++)
        open.row[j * open.words + (i >> 5)]! &= ~(1 << (i & 31));
  }
  return open;
}

/** Costs by relaxing every cell until nothing changes (Bellman & Ford). */
function relaxed(open: Bits, start: number): number[] {
  const cost = Array.from({ length: grid.nx * grid.ny }, () => Infinity);
  cost[start] = 0;
  for (let changed = true; changed;) {
    changed = false;
    for (let k = 0; k < cost.length; k++) {
      const [i, j] = [k % grid.nx, Math.floor(k / grid.nx)];
      if (!isSet(open, i, j)) continue;
      for (let dj = -1; dj <= 1; dj++)
        for (let di = -1; di <= 1; di++) {
          const [x, y] = [i + di, j + dj];
          if (x < 0 || y < 0 || x >= grid.nx || y >= grid.ny || !isSet(open, x, y)) continue;
          const through = cost[y * grid.nx + x]! + (di !== 0 && dj !== 0 ? 7 : 5);
          if (di === 0 && dj === 0) continue;
          if (through < cost[k]!) [cost[k], changed] = [through, true];
        }
    }
  }
  return cost;
}

const SEEDS = Array.from({ length: 40 }, (_, i) => 70 + i);

test.each(SEEDS)(
  'a route runs over open floor from the start to a goal, and is no longer than the cheapest way of cells (seed %i)',
  (seed) => {
    const open = cluttered(seed);
    const { next } = random(seed + 1000);
    const cells = Array.from({ length: grid.nx * grid.ny }, (_, k) => k).filter((k) =>
      isSet(open, k % grid.nx, Math.floor(k / grid.nx)),
    );
    const [from, to] = [cells[Math.floor(next() * cells.length)]!, cells[Math.floor(next() * cells.length)]!];
    const goals = noBits(grid.nx, grid.ny);
    setRun(goals, Math.floor(to / grid.nx), to % grid.nx, to % grid.nx);
    const cost = relaxed(open, from)[to]!;
    const route = routesFrom(open, grid, [{ cell: from, off: 0 }])(goals);
    if (cost === Infinity) return expect(route).toBeNull();
    const middle = (k: number) => [
      ((k % grid.nx) + 0.5) * grid.step,
      (Math.floor(k / grid.nx) + 0.5) * grid.step,
    ];
    expect(route!.at(-1)).toEqual(middle(to));
    expect(route![0]).toEqual(middle(from));
    let length = 0;
    route!.slice(1).forEach((b, n) => {
      const a = route![n]!;
      const far = Math.hypot(b[0] - a[0], b[1] - a[1]);
      length += far;
      for (let t = 0; t <= 1; t += 0.01) {
        const at = [a[0] + (b[0] - a[0]) * t, a[1] + (b[1] - a[1]) * t] as const;
        // A line may graze the corner of a cell beside it, by less than half a cell.
        const near = [-0.5, 0, 0.5].some((dx) =>
          [-0.5, 0, 0.5].some((dy) =>
            isSet(open, Math.floor(at[0] / grid.step + dx), Math.floor(at[1] / grid.step + dy)),
          ),
        );
        expect(near, `${at}`).toBe(true);
      }
    });
    // A corner step costs 7 fifths of a side and is √2 of it long.
    expect(length).toBeLessThanOrEqual((cost / 5) * grid.step * ((5 * Math.SQRT2) / 7) + 1e-9);
  },
);

test('of several starts the one is taken from which it is nearer, what they cost to begin with counted', () => {
  const open = noBits(grid.nx, grid.ny);
  for (let j = 0; j < grid.ny; j++) setRun(open, j, 0, grid.nx - 1);
  const goals = noBits(grid.nx, grid.ny);
  setRun(goals, 10, 30, 30);
  const at = (i: number, j: number) => [(i + 0.5) * grid.step, (j + 0.5) * grid.step];
  const cell = (i: number, j: number) => j * grid.nx + i;
  const route = (off: number) =>
    routesFrom(open, grid, [
      { cell: cell(2, 10), off: 0 },
      { cell: cell(20, 10), off },
    ])(goals)!;
  expect(route(0)).toEqual([at(20, 10), at(30, 10)]);
  expect(route(17)[0]).toEqual(at(20, 10));
  // The dearer start is passed on the way from the other, which is as it should be.
  expect(route(19)[0]).toEqual(at(2, 10));
});
