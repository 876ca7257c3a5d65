import type { Point } from '../../home/home';
import { tidy } from '../../home/kinds/tidy';
import type { Mark } from '../editor';
import { snapScene } from '../snapping/candidates';
import { snapPoint } from '../snapping/snapPoint';
import type { Snapped } from '../snapping/snapPoint';
import { moved } from './moved';
import type { Aim, Bench, Tool } from './tool';

/** Metres under which a drawn side is a slip of the hand. */
const LEAST_SIDE = 0.05;

export interface RectanglePlan {
  /** Is given the outline, counter-clockwise from the lower left. */
  make(outline: Point[]): void;
  /** A side that snapping has pulled together is taken as the hand drew it. */
  thin?: boolean;
  /** What a press without a drag sets down, shown under the pointer beforehand. */
  press?: { outline(aim: Aim): Point[]; make(outline: Point[]): void };
}

/** Drags a rectangle from corner to corner. */
export function createRectangleTool(bench: Bench, { make, thin = false, press }: RectanglePlan): Tool {
  let from: { aim: Aim; at: Point } | null = null;
  let to: Snapped | null = null;
  let over: Aim | null = null;

  const snapped = (aim: Aim): Snapped => {
    const found = snapPoint(snapScene(bench.home, bench.view), aim.at, { pull: aim.pull });
    if (!from || !thin) return found;
    const start = from;
    const side = (axis: 0 | 1) => {
      if (Math.abs(found.at[axis] - start.at[axis]) >= LEAST_SIDE) return found.at[axis];
      const drawn = aim.at[axis] - start.aim.at[axis];
      return start.at[axis] + Math.round(drawn / LEAST_SIDE) * LEAST_SIDE;
    };
    return { ...found, at: tidy([side(0), side(1)]) };
  };
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
  const follow = (aim: Aim) => {
    over = aim;
    to = snapped(aim);
  };

  return {
    cursor: 'crosshair',
    down(aim) {
      follow(aim);
      from = { aim, at: to!.at };
      bench.redrawOverlay();
    },
    move(aim) {
      follow(aim);
      bench.redrawOverlay();
    },
    up(aim) {
      follow(aim);
      const dragged = from && moved(from.aim, aim);
      // A hair less: decimals do not always come out even.
      if (dragged && sides().every((side) => side > LEAST_SIDE - 1e-6)) make(outline());
      else if (dragged) bench.say({ kind: press ? 'only-a-line' : 'outline-too-small' });
      else if (from && press) press.make(press.outline(aim));
      from = null;
      // A lifted finger points nowhere any more.
      if (aim.type === 'touch') to = null;
      bench.redrawOverlay();
    },
    cancel() {
      const busy = from !== null;
      from = null;
      to = null;
      over = null;
      if (busy) bench.redrawOverlay();
      return busy;
    },
    marks() {
      if (!to) return [];
      const marks: Mark[] = to.guides.map((guide) => ({ mark: 'guide', ...guide }));
      if (press && over && !(from && moved(from.aim, over)))
        return [{ mark: 'ring', points: press.outline(over), state: 'drawing' }];
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
