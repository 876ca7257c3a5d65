import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import type { Ring } from '../../../src/engine/geometry/point';
import {
  area,
  bounds,
  centroid,
  contains,
  containsEvenOdd,
  insideDistance,
  labelPlace,
  selfCrossing,
  signedArea,
} from '../../../src/engine/geometry/polygon';
import { motion, point, ring } from './shapes';

const room: Ring = [
  [0, 0],
  [4, 0],
  [4, 3],
  [0, 3],
];
const ell: Ring = [
  [0, 0],
  [6, 0],
  [6, 2],
  [2, 2],
  [2, 5],
  [0, 5],
];

describe('polygons', () => {
  it('have an area and a centre of mass', () => {
    expect(signedArea(room)).toBe(12);
    expect(signedArea([...room].reverse())).toBe(-12);
    expect(area(ell)).toBe(18);
    expect(centroid(room)).toEqual([2, 1.5]);
    // Two rectangles, 12 m² at (3, 1) and 6 m² at (1, 3.5).
    expect(centroid(ell)[0]).toBeCloseTo((12 * 3 + 6 * 1) / 18, 12);
    expect(centroid(ell)[1]).toBeCloseTo((12 * 1 + 6 * 3.5) / 18, 12);
    expect(
      centroid([
        [1, 1],
        [3, 1],
        [5, 1],
      ]),
    ).toEqual([3, 1]);
  });

  it('keep area and what they hold when turned and shifted', () => {
    fc.assert(
      fc.property(ring, motion, point, (shape, move, p) => {
        const moved = shape.map(move);
        expect(signedArea(moved)).toBeCloseTo(signedArea(shape), 6);
        const [x, y] = centroid(moved);
        const [cx, cy] = move(centroid(shape));
        expect(Math.hypot(x - cx, y - cy)).toBeLessThan(1e-8);
        const depth = insideDistance(shape, p);
        expect(insideDistance(moved, move(p))).toBeCloseTo(depth, 8);
      }),
    );
  });

  it('hold places, with holes by the even-odd rule', () => {
    expect(contains(room, [1, 1])).toBe(true);
    expect(contains(room, [5, 1])).toBe(false);
    expect(contains(ell, [4, 4])).toBe(false);
    const hole: Ring = [
      [1, 1],
      [2, 1],
      [2, 2],
      [1, 2],
    ];
    expect(containsEvenOdd([room, hole], [1.5, 1.5])).toBe(false);
    expect(containsEvenOdd([hole, [...room].reverse()], [3, 2])).toBe(true);
  });

  it('lie within their bounds', () => {
    expect(bounds(ell)).toEqual({ x0: 0, y0: 0, x1: 6, y1: 5 });
    expect(bounds([])).toEqual({ x0: Infinity, y0: Infinity, x1: -Infinity, y1: -Infinity });
  });

  it('find where an outline crosses, touches or folds back over itself', () => {
    expect(selfCrossing(room)).toBeNull();
    expect(selfCrossing(ell)).toBeNull();
    expect(
      selfCrossing([
        [0, 0],
        [1, 0],
        [0, 1],
      ]),
    ).toBeNull();
    expect(
      selfCrossing([
        [0, 0],
        [2, 2],
        [2, 0],
        [0, 2],
      ]),
    ).toEqual({ first: 0, second: 2, at: [1, 1] });
    expect(
      selfCrossing([
        [0, 0],
        [4, 0],
        [4, 2],
        [2, 0],
        [0, 2],
      ]),
    ).toEqual({ first: 0, second: 2, at: [2, 0] });
    expect(
      selfCrossing([
        [0, 0],
        [4, 0],
        [2, 0],
        [2, 3],
      ]),
    ).toEqual({ first: 0, second: 1, at: [2, 0] });
    expect(
      selfCrossing([
        [0, 0],
        [4, 0],
        [4, 0],
        [0, 3],
      ]),
    ).not.toBeNull();
    // A corner on a straight wall is no fault.
    expect(
      selfCrossing([
        [0, 0],
        [2, 0],
        [4, 0],
        [4, 3],
        [0, 3],
      ]),
    ).toBeNull();
  });

  it('find no fault in simple rings, however turned', () => {
    fc.assert(fc.property(ring, motion, (shape, move) => selfCrossing(shape.map(move)) === null));
  });

  it('give a label the deepest place', () => {
    const place = labelPlace(ell);
    // The deepest place of the ell is where its arms meet: the circle that touches both outer walls and the inner corner.
    const deepest = 2 / (1 + Math.SQRT1_2);
    expect(insideDistance(ell, place)).toBeGreaterThan(deepest - 0.02);
    expect(insideDistance(ell, place)).toBeLessThanOrEqual(deepest + 1e-9);
  });

  it('give a label a place even in a sliver a kilometre long', () => {
    const sliver: Ring = [
      [0, 0],
      [1000, 0],
      [1000, 0.001],
      [0, 0.001],
    ];
    expect(contains(sliver, labelPlace(sliver))).toBe(true);
  });

  it('never put a label outside', () => {
    fc.assert(
      fc.property(ring, (shape) => {
        const depth = insideDistance(shape, labelPlace(shape));
        expect(depth).toBeGreaterThanOrEqual(insideDistance(shape, centroid(shape)) - 1e-12);
        if (area(shape) > 0.5) expect(depth).toBeGreaterThan(0);
      }),
    );
  });
});
