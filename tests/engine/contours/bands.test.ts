import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { contoursOf, fieldContoursOf, type Contour } from '../../../src/engine/contours/bands';
import { BAND_EDGES } from '../../../src/engine/contours/thresholds';
import { containsEvenOdd, signedArea } from '../../../src/engine/geometry/polygon';
import { add, rotate, type Point } from '../../../src/engine/geometry/point';
import { bilinear, cellCentres, gridOver, type Grid } from '../../../src/engine/grid/grid';

const areaOf = ({ polygons }: Contour) =>
  polygons.reduce(
    (sum, [outer, ...holes]) =>
      sum + Math.abs(signedArea(outer)) - holes.reduce((s, hole) => s + Math.abs(signedArea(hole)), 0),
    0,
  );

const sample = (grid: Grid, field: (p: Point) => number) => {
  const { xs, ys } = cellCentres(grid);
  return xs.map((x, i) => field([x, ys[i]]));
};

/** µT round a long wire of 10 A: 0.2·I/r. */
const wireAt =
  (wire: Point) =>
  ([x, y]: Point) =>
    2 / Math.hypot(x - wire[0], y - wire[1]);

/** Nodes every 0.25 m over ±8 m. */
const nodes: Grid = { x0: -8.125, y0: -8.125, step: 0.25, nx: 65, ny: 65 };

describe('contours of a long wire', () => {
  // Closed form: circles of radius 0.2·I/B. The areas are those of linear interpolation on these nodes.
  const [far, near] = contoursOf(nodes, sample(nodes, wireAt([0.037, -0.021])), [0.4, 1]);

  it('enclose 78.545 m² at 0.4 µT and 12.570 m² at 1 µT', () => {
    expect(areaOf(far)).toBeCloseTo(78.545, 3);
    expect(areaOf(near)).toBeCloseTo(12.57, 3);
    expect(far.polygons).toHaveLength(1);
    expect(far.polygons[0]).toHaveLength(1);
  });

  it('keep to their circle within a hundredth of a cell where the logarithm is interpolated', () => {
    const [contour] = fieldContoursOf(nodes, sample(nodes, wireAt([0.037, -0.021])).map(Math.log), [0.4]);
    const radii = contour.polygons[0][0].map(([x, y]) => Math.hypot(x - 0.037, y + 0.021));
    expect(Math.max(...radii.map((r) => Math.abs(r - 5)))).toBeLessThan(0.0025);
    expect(contour.value).toBe(0.4);
  });

  it('turn and shift with the wire', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 360, noNaN: true }),
        fc.double({ min: 0, max: 2, noNaN: true }),
        (degrees, off) => {
          const wire = add([0.037, -0.021], rotate([off, 0], degrees));
          const [contour] = contoursOf(nodes, sample(nodes, wireAt(wire)), [0.4]);
          for (const [x, y] of contour.polygons[0][0])
            expect(Math.abs(Math.hypot(x - wire[0], y - wire[1]) - 5)).toBeLessThan(0.01);
        },
      ),
      { numRuns: 20 },
    );
  });

  it('move exactly with the lattice', () => {
    const moved = { ...nodes, x0: nodes.x0 + 12.5, y0: nodes.y0 - 7 };
    const field = sample(nodes, wireAt([0.037, -0.021]));
    const [here] = contoursOf(nodes, field, [0.4]);
    const [there] = contoursOf(moved, field, [0.4]);
    there.polygons[0][0].forEach(([x, y], i) => {
      const [hx, hy] = here.polygons[0][0][i];
      expect(x).toBeCloseTo(hx + 12.5, 9);
      expect(y).toBeCloseTo(hy - 7, 9);
    });
  });
});

describe('contours of a plane', () => {
  const grid = gridOver({ x0: 0, y0: 0, x1: 4, y1: 3 }, 0.1);

  it('run straight to the edge of the grid', () => {
    const [contour] = contoursOf(
      grid,
      sample(grid, ([x]) => x),
      [1.5],
    );
    expect(areaOf(contour)).toBeCloseTo(2.5 * 3, 9);
    const xs = contour.polygons[0][0].map(([x]) => x);
    expect(Math.min(...xs)).toBeCloseTo(1.5, 9);
  });

  it('keep the corners of the grid', () => {
    const [contour] = contoursOf(
      grid,
      sample(grid, ([x, y]) => x + y),
      [1],
    );
    for (const corner of [
      [4, 0],
      [4, 3],
      [0, 3],
    ])
      expect(contour.polygons[0][0]).toContainEqual(corner);
    // The triangle at the origin is left out; next to its ends the field is level for half a cell.
    expect(areaOf(contour)).toBeCloseTo(12 - 0.5, 2);
  });
});

describe('contours of any field', () => {
  const grid = gridOver({ x0: -2, y0: 1, x1: 3, y1: 4 }, 0.25);

  it('of a constant field are one band over the whole grid', () => {
    const contours = fieldContoursOf(
      grid,
      sample(grid, () => Math.log(0.14)),
      BAND_EDGES,
    );
    const filled = contours.filter(({ polygons }) => polygons.length > 0);
    expect(filled.map(({ value }) => value)).toEqual(BAND_EDGES.filter((edge) => edge <= 0.14));
    // Every filled area is the same whole rectangle, so all that shows is the topmost band.
    for (const contour of filled) expect(areaOf(contour)).toBeCloseTo(15, 9);
  });

  it('count a value that equals the threshold as inside', () => {
    const [contour] = contoursOf(
      grid,
      sample(grid, () => 0.1),
      [0.1],
    );
    expect(areaOf(contour)).toBeCloseTo(15, 9);
  });

  it('come in ascending order, whatever the order asked', () => {
    const field = sample(grid, ([x, y]) => Math.log(0.05 + x * x + y));
    expect(fieldContoursOf(grid, field, [2, 0.1, 0.5]).map(({ value }) => value)).toEqual([0.1, 0.5, 2]);
    expect(contoursOf(grid, field, [])).toEqual([]);
  });

  it('manage a grid of one cell or one row', () => {
    expect(areaOf(contoursOf({ x0: 0, y0: 0, step: 0.5, nx: 1, ny: 1 }, Float64Array.of(3), [2])[0])).toBe(
      0.25,
    );
    const row = { x0: 0, y0: 0, step: 1, nx: 4, ny: 1 };
    // 0, 1, 2, 3 at 0.5 … 3.5: the value 1.5 lies at x = 2.
    expect(areaOf(contoursOf(row, Float64Array.of(0, 1, 2, 3), [1.5])[0])).toBeCloseTo(2, 12);
  });

  it('leave a hole where the field dips', () => {
    const big = gridOver({ x0: -3, y0: -3, x1: 3, y1: 3 }, 0.1);
    const [contour] = contoursOf(
      big,
      sample(big, ([x, y]) => Math.hypot(x, y)),
      [1],
    );
    expect(contour.polygons).toHaveLength(1);
    expect(contour.polygons[0]).toHaveLength(2);
    expect(areaOf(contour)).toBeCloseTo(36 - Math.PI, 1);
  });

  it('nest: what is above a higher value is above a lower one; and agree with the field', () => {
    const value = fc.double({ min: -4, max: 1, noNaN: true });
    const place = fc.tuple(
      fc.double({ min: -2, max: 3, noNaN: true }),
      fc.double({ min: 1, max: 4, noNaN: true }),
    );
    fc.assert(
      fc.property(
        fc.array(value, { minLength: 240, maxLength: 240 }),
        fc.array(place, { minLength: 30, maxLength: 30 }),
        (values, places) => {
          const field = Float64Array.from(values);
          const contours = contoursOf(grid, field, [-3, -1.5, 0, 0.7]);
          const areas = contours.map(areaOf);
          for (let i = 1; i < areas.length; i++) expect(areas[i]).toBeLessThanOrEqual(areas[i - 1] + 1e-9);
          for (const p of places) {
            const inside = contours.map(({ polygons }) => containsEvenOdd(polygons.flat(), p));
            for (let i = 1; i < inside.length; i++) expect(inside[i] && !inside[i - 1]).toBe(false);
          }
          // At a cell's own centre there is nothing to interpolate.
          const { xs, ys } = cellCentres(grid);
          for (let cell = 0; cell < field.length; cell += 7) {
            const centre: Point = [xs[cell], ys[cell]];
            const here = bilinear(grid, field, centre);
            for (const { value: edge, polygons } of contours) {
              if (Math.abs(here - edge) > 1e-6)
                expect(containsEvenOdd(polygons.flat(), centre)).toBe(here > edge);
            }
          }
        },
      ),
      { numRuns: 40 },
    );
  });
});
