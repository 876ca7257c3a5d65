import { expect, it } from 'vitest';
import fc from 'fast-check';
import { distance } from '../../../src/engine/geometry/point';
import { rectangle, toLocal, toPlan } from '../../../src/engine/geometry/pose';
import { signedArea } from '../../../src/engine/geometry/polygon';
import { point } from './shapes';

const turn = fc.double({ min: -720, max: 720, noNaN: true });

it('goes to the plan and back', () => {
  fc.assert(
    fc.property(point, turn, point, (at, angle, p) => {
      expect(distance(toLocal({ at, angle }, toPlan({ at, angle }, p)), p)).toBeLessThan(1e-9);
    }),
  );
});

it('stands a bed with its head to +y at angle 0 and to −x a quarter turn on', () => {
  expect(rectangle({ at: [2, 1], angle: 0 }, [1.4, 2])).toEqual([
    [1.3, 0],
    [2.7, 0],
    [2.7, 2],
    [1.3, 2],
  ]);
  expect(toPlan({ at: [2, 1], angle: 90 }, [0, 1])).toEqual([1, 1]);
});

it('keeps the size of a footprint, counter-clockwise', () => {
  fc.assert(
    fc.property(
      point,
      turn,
      fc.double({ min: 0.3, max: 3, noNaN: true }),
      fc.double({ min: 0.3, max: 3, noNaN: true }),
      (at, angle, w, l) => {
        expect(signedArea(rectangle({ at, angle }, [w, l]))).toBeCloseTo(w * l, 8);
      },
    ),
  );
});
