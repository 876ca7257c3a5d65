import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { cross, distance, dot, lerp, rotate, sub } from '../../../src/engine/geometry/point';
import { point } from './shapes';

describe('points', () => {
  it('turn by quarters exactly', () => {
    expect(rotate([3, 2], 90)).toEqual([-2, 3]);
    expect(rotate([3, 2], -90)).toEqual([2, -3]);
    expect(rotate([3, 2], 540)).toEqual([-3, -2]);
    expect(rotate([3, 2], 360)).toEqual([3, 2]);
  });

  it('keep length and angle when turned', () => {
    fc.assert(
      fc.property(point, point, fc.double({ min: -720, max: 720, noNaN: true }), (a, b, degrees) => {
        const [turnedA, turnedB] = [rotate(a, degrees), rotate(b, degrees)];
        expect(distance(turnedA, turnedB)).toBeCloseTo(distance(a, b), 9);
        expect(dot(turnedA, turnedB)).toBeCloseTo(dot(a, b), 9);
        expect(cross(turnedA, turnedB)).toBeCloseTo(cross(a, b), 9);
      }),
    );
  });

  it('lie between two places in proportion', () => {
    expect(lerp([1, 1], [3, 5], 0.25)).toEqual([1.5, 2]);
    expect(sub([3, 5], [1, 1])).toEqual([2, 4]);
  });

  it('say which side a direction lies on', () => {
    expect(cross([1, 0], [0, 1])).toBeGreaterThan(0);
    expect(cross([0, 1], [1, 0])).toBeLessThan(0);
  });
});
