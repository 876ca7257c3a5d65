import fc from 'fast-check';
import { rotate, add, type Point, type Ring } from '../../../src/engine/geometry/point';

/** Coordinates of a plan, metres, in whole centimetres. */
const coordinate = fc.integer({ min: -3000, max: 3000 }).map((cm) => cm / 100);

export const point: fc.Arbitrary<Point> = fc.tuple(coordinate, coordinate);

/** A simple ring of 3 to 12 corners: one corner in each sector round a middle, 0.5 to 6 m off. */
export const ring: fc.Arbitrary<Ring> = fc
  .tuple(
    point,
    fc.array(
      fc.tuple(fc.double({ min: 0.1, max: 0.9, noNaN: true }), fc.double({ min: 0.5, max: 6, noNaN: true })),
      { minLength: 3, maxLength: 12 },
    ),
  )
  .map(([middle, corners]) =>
    corners.map(([within, reach], i) =>
      add(middle, rotate([reach, 0], ((i + within) / corners.length) * 360)),
    ),
  );

/** Turned and shifted by any amount. */
export const motion = fc.tuple(fc.double({ min: -360, max: 360, noNaN: true }), point).map(
  ([degrees, shift]) =>
    (p: Point): Point =>
      add(rotate(p, degrees), shift),
);
