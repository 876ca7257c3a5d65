import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import {
  cut,
  floorOutline,
  grown,
  intersection,
  joined,
  without,
} from '../../../src/engine/geometry/outline';
import { area, containsEvenOdd, insideDistance, signedArea } from '../../../src/engine/geometry/polygon';
import type { Ring } from '../../../src/engine/geometry/point';
import { point, ring } from './shapes';

const box = (x0: number, y0: number, x1: number, y1: number): Ring => [
  [x0, y0],
  [x1, y0],
  [x1, y1],
  [x0, y1],
];
const floor = (rings: readonly Ring[]) => Math.abs(rings.reduce((sum, r) => sum + signedArea(r), 0));

describe('the floor of a level', () => {
  it('joins rooms across their walls', () => {
    const outline = floorOutline([box(0, 0, 4, 3), box(4.1, 0, 8, 3), box(0, 3.3, 8, 6)]);
    expect(outline).toHaveLength(1);
    expect(floor(outline)).toBeCloseTo(48, 6);
  });

  it('keeps apart what stands farther than the closing', () => {
    expect(floorOutline([box(0, 0, 4, 3), box(4.6, 0, 8, 3)])).toHaveLength(2);
  });

  it('keeps one room as it is, either winding, with its sharp and inner corners', () => {
    const ell: Ring = [
      [0, 0],
      [6, 0],
      [6, 2],
      [2, 2],
      [2, 5],
      [0, 5],
    ];
    for (const shape of [
      ell,
      [...ell].reverse(),
      [
        [0, 0],
        [6, 0],
        [0, 2],
      ] as Ring,
    ]) {
      const outline = floorOutline([shape]);
      expect(outline).toHaveLength(1);
      expect(new Set(outline[0].map(String))).toEqual(new Set(shape.map(String)));
    }
  });

  it('leaves a courtyard open', () => {
    const rooms = [box(0, 0, 9, 3), box(0, 6, 9, 9), box(0, 3, 3, 6), box(6, 3, 9, 6)];
    const outline = floorOutline(rooms);
    expect(outline).toHaveLength(2);
    expect(containsEvenOdd(outline, [4.5, 4.5])).toBe(false);
    expect(floor(outline)).toBeCloseTo(72, 6);
  });

  it('does not count floor twice where rooms overlap, whatever their windings', () => {
    expect(floor(floorOutline([box(0, 0, 4, 3), [...box(2, 0, 6, 3)].reverse()]))).toBeCloseTo(18, 6);
  });

  it('of no rooms is empty', () => {
    expect(floorOutline([])).toEqual([]);
  });

  it('holds every place that a room holds', () => {
    fc.assert(
      fc.property(fc.array(ring, { minLength: 1, maxLength: 4 }), point, (rooms, p) => {
        if (rooms.some((room) => insideDistance(room, p) > 1e-4))
          expect(containsEvenOdd(floorOutline(rooms), p)).toBe(true);
      }),
    );
  });
});

describe('cutting and sharing', () => {
  it('leaves the rooms out of the grounds', () => {
    const left = without(box(-10, -10, 10, 10), [box(0, 0, 4, 3), box(3, 0, 8, 3)]);
    expect(floor(left)).toBeCloseTo(400 - 24, 6);
    expect(containsEvenOdd(left, [1, 1])).toBe(false);
    expect(containsEvenOdd(left, [-1, 1])).toBe(true);
  });

  it('gives back the whole or nothing', () => {
    expect(floor(without(box(0, 0, 2, 2), []))).toBeCloseTo(4, 6);
    expect(without(box(0, 0, 2, 2), [box(-1, -1, 3, 3)])).toEqual([]);
    expect(intersection(box(0, 0, 2, 2), box(3, 3, 4, 4))).toEqual([]);
  });

  it('splits a ring into what two share and what only one has', () => {
    fc.assert(
      fc.property(ring, ring, (a, b) => {
        // Coordinates are whole hundredths of a millimetre: area is right to the length of the edges times that.
        expect(floor(intersection(a, b)) + floor(without(a, [b]))).toBeCloseTo(area(a), 2);
      }),
    );
  });
});

describe('areas with holes', () => {
  const court = floorOutline([box(0, 0, 9, 3), box(0, 6, 9, 9), box(0, 3, 3, 6), box(6, 3, 9, 6)]);

  it('grow outward and into their holes, with sharp corners', () => {
    expect(floor(grown(court, 0.5))).toBeCloseTo(10 * 10 - 2 * 2, 4);
    expect(floor(grown(court, -0.5))).toBeCloseTo(8 * 8 - 4 * 4, 4);
  });

  it('join without closing gaps, and are cut out of one another', () => {
    expect(joined([box(0, 0, 4, 3), box(4.1, 0, 8, 3)])).toHaveLength(2);
    expect(joined([box(0, 0, 4, 3), box(4, 0, 8, 3)])).toHaveLength(1);
    expect(floor(cut(court, [box(-1, -1, 10, 4.5)]))).toBeCloseTo(72 / 2, 4);
    expect(cut(court, [box(-1, -1, 10, 10)])).toEqual([]);
  });
});
