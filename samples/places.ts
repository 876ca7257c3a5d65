import type { Point } from '../src/home/home';

/** Points written one after another, as in '0,0 2.9,0 2.9,3'. */
export const places = (written: string): Point[] =>
  written
    .trim()
    .split(/\s+/)
    .map((pair): Point => {
      const [x, y] = pair.split(',').map(Number);
      return [x, y];
    });

/** Corners of an upright rectangle, counter-clockwise from the lower left. */
export const box = (x0: number, y0: number, x1: number, y1: number): Point[] => [
  [x0, y0],
  [x1, y0],
  [x1, y1],
  [x0, y1],
];
