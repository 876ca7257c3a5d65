import type { Point } from '../../home/home';
import type { Mark } from '../editor';
import { snapScene } from '../snapping/candidates';
import { snapPoint } from '../snapping/snapPoint';
import type { Snapped } from '../snapping/snapPoint';
import { moved } from './moved';
import type { Aim, Bench, Tool } from './tool';

/** Metres under which a drawn side is a slip of the hand. */
const LEAST_SIDE = 0.05;

/** Drags a rectangle from corner to corner; `make` is given its outline, counter-clockwise from the lower left. */
export function createRectangleTool(bench: Bench, make: (outline: Point[]) => void): Tool {
  let from: { aim: Aim; at: Point } | null = null;
  let to: Snapped | null = null;

  const snapped = (aim: Aim) => snapPoint(snapScene(bench.home, bench.view), aim.at, { pull: aim.pull });
  const sides = () =>
    from && to ? [Math.abs(to.at[0] - from.at[0]), Math.abs(to.at[1] - from.at[1])] : [0, 0];

  const outline = (): Point[] => {
    const [a, b] = [from!.at, to!.at];
    const [x0, x1] = [Math.min(a[0], b[0]), Math.max(a[0], b[0])];
    const [y0, y1] = [Math.min(a[1], b[1]), Math.max(a[1], b[1])];
    return [
      [x0, y0],
      [x1, y0],
      [x1, y1],
      [x0, y1],
    ];
  };

  return {
    cursor: 'crosshair',
    down(aim) {
      to = snapped(aim);
      from = { aim, at: to.at };
      bench.redrawOverlay();
    },
    move(aim) {
      to = snapped(aim);
      bench.redrawOverlay();
    },
    up(aim) {
      to = snapped(aim);
      const dragged = from && moved(from.aim, aim);
      if (dragged && sides().every((side) => side >= LEAST_SIDE)) make(outline());
      else if (dragged) bench.say({ kind: 'outline-too-small' });
      from = null;
      bench.redrawOverlay();
    },
    cancel() {
      const busy = from !== null;
      from = null;
      to = null;
      if (busy) bench.redrawOverlay();
      return busy;
    },
    marks() {
      if (!to) return [];
      const marks: Mark[] = to.guides.map((guide) => ({ mark: 'guide', ...guide }));
      if (from && sides().some((side) => side > 0)) {
        const ring = outline();
        const [width, depth] = sides() as [number, number];
        marks.push({ mark: 'ring', points: ring, state: 'drawing' });
        marks.push({ mark: 'length', from: ring[0]!, to: ring[1]!, text: bench.lengthText(width) });
        marks.push({ mark: 'length', from: ring[1]!, to: ring[2]!, text: bench.lengthText(depth) });
      }
      return [
        ...marks,
        { mark: 'corner', at: to.at, snapped: to.reason === 'corner' || to.reason === 'wall' },
      ];
    },
  };
}
