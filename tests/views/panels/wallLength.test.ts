import { describe, expect, it } from 'vitest';
import type { Point } from '../../../src/home/home';
import { wallLength, withWallLength } from '../../../src/views/panels/sketch/wallLength';

const rectangle: Point[] = [
  [0, 0],
  [4, 0],
  [4, 3],
  [0, 3],
];

describe('a wall’s exact length', () => {
  it('keeps a rectangle a rectangle, whichever wall is typed', () => {
    for (const wall of [0, 1, 2, 3]) {
      const outline = withWallLength(rectangle, wall, 5.25);
      expect(wallLength(outline, wall)).toBeCloseTo(5.25, 12);
      expect(wallLength(outline, (wall + 2) % 4)).toBeCloseTo(5.25, 12);
      expect(wallLength(outline, (wall + 1) % 4)).toBeCloseTo(wallLength(rectangle, (wall + 1) % 4), 12);
    }
  });

  it('keeps every corner of an L a right angle', () => {
    const ell: Point[] = [
      [0, 0],
      [6, 0],
      [6, 2],
      [3, 2],
      [3, 5],
      [0, 5],
    ];
    for (const wall of ell.keys()) {
      const outline = withWallLength(ell, wall, wallLength(ell, wall) + 0.4);
      outline.forEach((corner, i) => {
        const before = outline[(i + 5) % 6]!;
        const after = outline[(i + 1) % 6]!;
        const dot =
          (before[0] - corner[0]) * (after[0] - corner[0]) + (before[1] - corner[1]) * (after[1] - corner[1]);
        expect(Math.abs(dot)).toBeLessThan(1e-9);
      });
    }
  });

  it('moves the one shared corner of a triangle', () => {
    const triangle: Point[] = [
      [0, 0],
      [4, 0],
      [0, 3],
    ];
    expect(withWallLength(triangle, 0, 5)).toEqual([
      [0, 0],
      [5, 0],
      [0, 3],
    ]);
  });
});
