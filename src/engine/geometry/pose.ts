import { add, rotate, sub, type Point, type Ring } from './point';

/** Where a thing stands and how it is turned, degrees counter-clockwise. */
export interface Pose {
  at: Point;
  angle: number;
}

/** From the thing's own axes (its middle at 0,0) to the plan. */
export const toPlan = (pose: Pose, local: Point): Point => add(pose.at, rotate(local, pose.angle));

/** From the plan to the thing's own axes. */
export const toLocal = (pose: Pose, p: Point): Point => rotate(sub(p, pose.at), -pose.angle);

/** Corners of a footprint of size [width, length], counter-clockwise from its left foot (seen along +y at angle 0). */
export function rectangle(pose: Pose, size: readonly [number, number]): Ring {
  const [w, l] = [size[0] / 2, size[1] / 2];
  const corners: Ring = [
    [-w, -l],
    [w, -l],
    [w, l],
    [-w, l],
  ];
  return corners.map((corner) => toPlan(pose, corner));
}
