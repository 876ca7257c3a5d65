import type { Point } from '../../../home/home';

/** One stroke of a sign on the plan, metres, y up; how thick it is drawn does not change with the scale. */
export interface Line {
  points: readonly Point[];
  closed?: boolean;
  /** CSS pixels; 0 for a fill alone. */
  weight: number;
  dash?: readonly number[];
  fill?: 'paper' | 'veil';
}

/** Points along an arc, degrees counter-clockwise from +x, ends included. */
export function arcPoints(centre: Point, radius: number, from: number, to: number, steps = 16): Point[] {
  return Array.from({ length: steps + 1 }, (_, i): Point => {
    const angle = ((from + ((to - from) * i) / steps) * Math.PI) / 180;
    return [centre[0] + radius * Math.cos(angle), centre[1] + radius * Math.sin(angle)];
  });
}
