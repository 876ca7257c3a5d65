import type { Point } from '../../../home/home';

export const HATCH = { angle: 52, pitch: 6.5, line: 0.9, edge: 1 } as const;

/**
 * Parallel strokes that cover a box, y down the page, in the box's own unit; clip them to the area they stand for. The
 * strokes lie on one lattice through `anchor`, so that neighbouring areas match and a hatch moves with its plan.
 */
export function hatchLines(
  box: { x0: number; y0: number; x1: number; y1: number },
  anchor: Point,
  pitch: number = HATCH.pitch,
): [Point, Point][] {
  const slope = Math.tan((HATCH.angle * Math.PI) / 180);
  const height = box.y1 - box.y0;
  const across = pitch / Math.sin((HATCH.angle * Math.PI) / 180);
  // Each stroke runs from the box's lower edge up to the right; x is where it meets that edge.
  const phase = anchor[0] + (anchor[1] - box.y1) / slope;
  const first = Math.ceil((box.x0 - height / slope - phase) / across);
  const last = Math.floor((box.x1 - phase) / across);
  return Array.from({ length: Math.max(0, last - first + 1) }, (_, i): [Point, Point] => {
    const x = phase + (first + i) * across;
    return [
      [x, box.y1],
      [x + height / slope, box.y0],
    ];
  });
}
