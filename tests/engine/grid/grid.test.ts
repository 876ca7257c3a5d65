import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { bilinear, cellCentres, gridOver } from '../../../src/engine/grid/grid';

const metres = fc.integer({ min: -40_000, max: 40_000 }).map((mm) => mm / 1000);

describe('grids', () => {
  it('cover their bounds with whole cells', () => {
    expect(gridOver({ x0: 0, y0: 0, x1: 4, y1: 3 }, 0.1)).toEqual({
      x0: 0,
      y0: 0,
      step: 0.1,
      nx: 40,
      ny: 30,
    });
    expect(gridOver({ x0: 0.3, y0: -0.05, x1: 0.6, y1: 0.31 }, 0.1, 0.2)).toEqual({
      x0: 0.1,
      y0: -0.3,
      step: 0.1,
      nx: 7,
      ny: 9,
    });
    expect(gridOver({ x0: 2, y0: 2, x1: 2, y1: 2 }, 0.5)).toMatchObject({ nx: 1, ny: 1 });
  });

  it('lie on one world lattice and cover what is asked', () => {
    fc.assert(
      fc.property(
        metres,
        metres,
        fc.integer({ min: 0, max: 9000 }),
        fc.constantFrom(0.1, 0.2, 0.5),
        (x0, y0, size, step) => {
          const box = { x0, y0, x1: x0 + size / 1000, y1: y0 + size / 2000 };
          const grid = gridOver(box, step, 0.3);
          const offset = grid.x0 / step;
          expect(Math.abs(offset - Math.round(offset))).toBeLessThan(1e-6);
          expect(grid.x0).toBeLessThanOrEqual(box.x0 - 0.3 + 1e-6);
          expect(grid.y0 + grid.ny * step).toBeGreaterThanOrEqual(box.y1 + 0.3 - 1e-6);
          expect(grid.nx * step).toBeLessThan(size / 1000 + 0.6 + 2 * step + 1e-6);
        },
      ),
    );
  });

  it('have centres half a cell in, row after row', () => {
    const { xs, ys } = cellCentres({ x0: 1, y0: -1, step: 0.5, nx: 3, ny: 2 });
    expect([...xs]).toEqual([1.25, 1.75, 2.25, 1.25, 1.75, 2.25]);
    expect([...ys]).toEqual([-0.75, -0.75, -0.75, -0.25, -0.25, -0.25]);
  });

  it('give a plane back exactly between centres, and the edge beyond', () => {
    const grid = gridOver({ x0: -1, y0: 2, x1: 3, y1: 5 }, 0.5);
    const { xs, ys } = cellCentres(grid);
    const plane = xs.map((x, i) => 2 + 3 * x - ys[i]);
    expect(bilinear(grid, plane, [0.4, 3.1])).toBeCloseTo(2 + 1.2 - 3.1, 12);
    expect(bilinear(grid, plane, [9, 3.1])).toBeCloseTo(2 + 3 * 2.75 - 3.1, 12);
    expect(bilinear({ x0: 0, y0: 0, step: 1, nx: 1, ny: 1 }, [7], [3, 3])).toBe(7);
  });
});
