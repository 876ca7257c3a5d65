import { add, cross, distance, scale, sub } from '../../engine/geometry/point';
import { closestOnSegment } from '../../engine/geometry/segment';
import type { Point } from '../../home/home';
import { tidy } from '../../home/kinds/tidy';
import type { SnapScene } from './candidates';
import { GRID } from './snapPoint';
import type { Snapped } from './snapPoint';

interface Pull {
  shift: Point;
  size: number;
}

const better = (best: Pull | null, shift: Point, reach: number): Pull | null => {
  const size = Math.hypot(shift[0], shift[1]);
  return size <= (best?.size ?? reach) ? { shift, size } : best;
};

const unitAcross = ([a, b]: readonly [Point, Point]): Point => {
  const [x, y] = sub(b, a);
  const length = Math.hypot(x, y) || 1;
  return [-y / length, x / length];
};

/** The shift that brings one of the points onto one of the walls, keeping square to `held` where one already holds. */
function ontoWall(points: readonly Point[], scene: SnapScene, pull: number, held: Point | null) {
  let best: Pull | null = null;
  let line: readonly [Point, Point] | null = null;
  for (const wall of scene.lines) {
    const across = unitAcross(wall);
    const along: Point | null = held && [-held[1], held[0]];
    const turn = along ? across[0] * along[0] + across[1] * along[1] : 1;
    // A second wall nearly in line with the first has nothing to add.
    if (Math.abs(turn) < 0.1) continue;
    for (const p of points) {
      const { at: foot, t } = closestOnSegment(p, wall[0], wall[1]);
      if (t <= 0 || t >= 1) continue;
      const gap = cross(sub(wall[1], wall[0]), sub(p, wall[0])) / (distance(wall[0], wall[1]) || 1);
      const next = better(best, along ? scale(along, -gap / turn) : sub(foot, p), pull);
      if (next !== best) [best, line] = [next, wall];
    }
  }
  return best && line ? { shift: best.shift, line } : null;
}

/**
 * How a thing (or several) really moves when it is to move by `delta`: one of its points onto a corner; else onto a wall,
 * and along it onto a second; else level with a corner; else by whole decimetres.
 */
export function snapMove(
  scene: SnapScene,
  points: readonly Point[],
  delta: Point,
  pull: number,
): { delta: Point; guides: Snapped['guides'] } {
  if (pull <= 0 || points.length === 0) return { delta: tidy(delta), guides: [] };
  const moved = points.map((p) => add(p, delta));

  let corner: Pull | null = null;
  for (const to of scene.points) for (const p of moved) corner = better(corner, sub(to, p), pull);
  if (corner) return { delta: add(delta, corner.shift), guides: [] };

  const first = ontoWall(moved, scene, pull, null);
  if (first) {
    const onWall = add(delta, first.shift);
    const second = ontoWall(
      points.map((p) => add(p, onWall)),
      scene,
      pull,
      unitAcross(first.line),
    );
    return { delta: second ? add(onWall, second.shift) : onWall, guides: [] };
  }

  const shift: [number, number] = [0, 0];
  const guides: Snapped['guides'] = [];
  for (const axis of [0, 1] as const) {
    let best: { by: number; from: Point; p: Point } | null = null;
    for (const from of scene.points)
      for (const p of moved) {
        const by = from[axis] - p[axis];
        if (Math.abs(by) <= Math.abs(best?.by ?? pull)) best = { by, from, p };
      }
    if (best) {
      shift[axis] = best.by;
      guides.push({ from: best.from, to: best.p });
    } else shift[axis] = Math.round(moved[0]![axis] / GRID) * GRID - moved[0]![axis];
  }
  const settled = guides.map(({ from, to }) => ({ from, to: tidy(add(to, shift)) }));
  return { delta: tidy(add(delta, shift)), guides: settled };
}
