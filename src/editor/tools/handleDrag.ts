import { distance, sub } from '../../engine/geometry/point';
import { moveHandle } from '../../home/edits/moveHandle';
import type { Point, Ref } from '../../home/home';
import type { Handle } from '../../home/kinds/kind';
import type { Mark } from '../editor';
import { snapScene } from '../snapping/candidates';
import { snapPoint } from '../snapping/snapPoint';
import { middleOf, snapTurn } from '../snapping/snapTurn';
import { kindOf, thingOf } from '../things';
import type { Aim, Bench, Subject } from './tool';

/** Drags one handle of one thing: a corner, an end, the middle of a wall, or the one that turns it. */
export function createHandleDrag(bench: Bench, subject: Subject, ref: Ref, handle: Handle) {
  const start = subject.home;
  const thing = thingOf(start, ref)!;
  const kind = kindOf(ref);
  // What turns lines up with walls, not with other furniture that may stand askew.
  const scene =
    handle.role === 'turn'
      ? snapScene(start, bench.view, [ref], ['room'])
      : snapScene(start, bench.view, [ref]);
  const shape = kind.shape(start, thing);
  const own = neighbours(shape.points, shape.closed, handle.at);
  const middle = middleOf(shape.points);
  let guides: { from: Point; to: Point }[] = [];
  subject.mark(handle.role === 'turn' ? 'Turn' : 'Change shape');

  const target = (aim: Aim): Point => {
    if (handle.role === 'turn') return snapTurn(scene, middle, aim.at, aim.pull);
    // A corner comes level with its neighbours, so that walls are easily square.
    const withOwn = { points: [...scene.points, ...own], lines: scene.lines };
    const snapped = snapPoint(withOwn, aim.at, { pull: aim.pull });
    guides = snapped.guides;
    return snapped.at;
  };

  return {
    move: (aim: Aim) => void subject.redraw(moveHandle(ref, handle.key, target(aim))),
    marks(): Mark[] {
      const now = thingOf(subject.home, ref);
      const at = now && kind.handles(subject.home, now).find(({ key }) => key === handle.key)?.at;
      const lines: Mark[] = guides.map(({ from, to }) => ({ mark: 'guide', from, to }));
      if (!now || !at) return lines;
      const after = kind.shape(subject.home, now);
      const lengths: Mark[] =
        handle.role === 'corner' || handle.role === 'end'
          ? neighbours(after.points, after.closed, at).map((to) => ({
              mark: 'length',
              from: at,
              to,
              text: bench.lengthText(distance(at, to)),
            }))
          : [];
      return [...lines, ...lengths, { mark: 'handle', at, role: handle.role, key: handle.key }];
    },
  };
}

/** The corners next to one of an outline or path. */
function neighbours(points: readonly Point[], closed: boolean, at: Point): Point[] {
  const i = points.findIndex((p) => Math.hypot(...sub(p, at)) < 1e-9);
  if (i < 0) return [];
  const n = points.length;
  const beside = closed ? [(i + n - 1) % n, (i + 1) % n] : [i - 1, i + 1];
  return beside.flatMap((k) => (points[k] ? [points[k]] : []));
}
