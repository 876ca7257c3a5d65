import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { distance, lerp } from '../../../src/engine/geometry/point';
import { closestOnSegment, distanceToPath, segmentsCross } from '../../../src/engine/geometry/segment';
import { point } from './shapes';

describe('segments', () => {
  it('are nearest at an end or square to them', () => {
    expect(closestOnSegment([2, 3], [0, 0], [4, 0])).toEqual({ at: [2, 0], t: 0.5, distance: 3 });
    expect(closestOnSegment([-3, 4], [0, 0], [4, 0])).toEqual({ at: [0, 0], t: 0, distance: 5 });
    expect(closestOnSegment([7, 4], [0, 0], [4, 0])).toEqual({ at: [4, 0], t: 1, distance: 5 });
    expect(closestOnSegment([3, 4], [0, 0], [0, 0]).distance).toBe(5);
  });

  it('have no place nearer than the nearest', () => {
    fc.assert(
      fc.property(point, point, point, fc.double({ min: 0, max: 1, noNaN: true }), (p, a, b, t) => {
        expect(closestOnSegment(p, a, b).distance).toBeLessThanOrEqual(distance(p, lerp(a, b, t)) + 1e-9);
      }),
    );
  });

  it('cross, touch, overlap or miss', () => {
    expect(segmentsCross([0, 0], [2, 2], [0, 2], [2, 0])).toEqual([1, 1]);
    expect(segmentsCross([0, 0], [2, 0], [1, 0], [1, 5])).toEqual([1, 0]);
    expect(segmentsCross([0, 0], [2, 0], [1, 0.1], [1, 5])).toBeNull();
    expect(segmentsCross([0, 0], [4, 0], [1, 0], [2, 0])).toEqual([1, 0]);
    expect(segmentsCross([1, 0], [2, 0], [0, 0], [4, 0])).toEqual([1, 0]);
    expect(segmentsCross([0, 0], [1, 0], [2, 0], [3, 0])).toBeNull();
    expect(segmentsCross([0, 0], [1, 0], [0, 1], [1, 1])).toBeNull();
  });

  it('share a place that lies on both', () => {
    fc.assert(
      fc.property(point, point, point, point, (a, b, c, d) => {
        const at = segmentsCross(a, b, c, d);
        if (!at) return;
        expect(closestOnSegment(at, a, b).distance).toBeLessThan(1e-8);
        expect(closestOnSegment(at, c, d).distance).toBeLessThan(1e-8);
      }),
    );
  });

  it('make a path, which may be one place or none', () => {
    expect(
      distanceToPath(
        [0, 3],
        [
          [-5, 0],
          [5, 0],
          [5, 9],
        ],
      ),
    ).toBe(3);
    expect(distanceToPath([3, 4], [[0, 0]])).toBe(5);
    expect(distanceToPath([3, 4], [])).toBe(Infinity);
  });
});
