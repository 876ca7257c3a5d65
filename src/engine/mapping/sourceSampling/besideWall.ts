import { between, uniform } from './latents';
import type { Extent } from './slots';
import type { Wall } from '../survey';

/**
 * A place by three latents: along all walls end to end, on either side, near to far metres off them; anywhere within the
 * extent where there are none.
 */
export function besideWall(
  walls: readonly Wall[],
  extent: Extent,
  near: number,
  far: number,
  along: number,
  across: number,
  rest: number,
): [number, number] {
  if (walls.length === 0)
    return [between(extent.x0, extent.x1, along), between(extent.y0, extent.y1, across)];
  let total = 0;
  for (const { from, to } of walls) total += Math.hypot(to[0] - from[0], to[1] - from[1]);
  let left = total * uniform(along);
  let wall = walls[0];
  let length = 0;
  for (wall of walls) {
    length = Math.hypot(wall.to[0] - wall.from[0], wall.to[1] - wall.from[1]);
    if (left <= length) break;
    left -= length;
  }
  const [u, v] = [(wall.to[0] - wall.from[0]) / length, (wall.to[1] - wall.from[1]) / length];
  const off = (rest < 0 ? -1 : 1) * between(near, far, across);
  return [wall.from[0] + left * u - off * v, wall.from[1] + left * v + off * u];
}
