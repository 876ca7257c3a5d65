import { add, distance, scale, sub } from '../../engine/geometry/point';
import { selfCrossing } from '../../engine/geometry/polygon';
import type { Point } from '../../home/home';
import { tidy } from '../../home/kinds/tidy';
import type { KeyInput, Mark } from '../editor';
import { snapScene } from '../snapping/candidates';
import { meantWay, snapPoint } from '../snapping/snapPoint';
import type { Snapped } from '../snapping/snapPoint';
import type { Aim, Bench, Tool } from './tool';
import { createTyping } from './typing';

export interface DraftPlan {
  closed: boolean;
  /** Corners without which it is nothing yet, and with which it is done by itself. */
  least: number;
  most: number;
  /** Makes the thing; false where it was refused, and the draft stays to be mended. */
  finish(points: Point[]): boolean;
}

/** Draws an outline or a path corner by corner, by pointer and by typed lengths. */
export function createDraft(bench: Bench, plan: () => DraftPlan): Tool {
  let corners: Point[] = [];
  let ahead: Snapped | null = null;
  const typing = createTyping();

  const ways = () => corners.slice(1).map((corner, i) => sub(corner, corners[i]!));

  const reset = () => {
    corners = [];
    ahead = null;
    typing.clear();
  };

  const snapped = (aim: Aim): Snapped => {
    const first = corners[0];
    const { closed, least } = plan();
    if (
      first &&
      closed &&
      corners.length >= least &&
      distance(first, aim.at) <= Math.max(aim.pull, aim.reach)
    )
      return { at: first, reason: 'corner', guides: [] };
    const scene = snapScene(bench.home, bench.view);
    // The new outline comes level with its own corners too: that is what makes it square at the last one.
    const points = [...scene.points, ...corners];
    return snapPoint({ points, lines: scene.lines }, aim.at, {
      pull: aim.pull,
      from: corners.at(-1),
      along: ways(),
    });
  };

  const finish = () => {
    const { least, finish: make } = plan();
    if (corners.length < least) return false;
    if (make(corners)) reset();
    bench.redrawOverlay();
    return true;
  };

  const place = (at: Point) => {
    const { closed, least, most } = plan();
    typing.clear();
    const last = corners.at(-1);
    if (last && distance(last, at) < 1e-6) return;
    if (closed && corners.length >= least && distance(corners[0]!, at) < 1e-6) return void finish();
    corners = [...corners, tidy(at)];
    if (corners.length >= most) finish();
  };

  /** Where the next corner would come: a typed length goes the way the pointer shows, straight where it nearly is. */
  const next = (): Point | null => {
    const from = corners.at(-1);
    if (!ahead || !from || typing.text === '') return ahead?.at ?? null;
    const toward = sub(ahead.at, from);
    const shown = Math.hypot(toward[0], toward[1]);
    if (shown < 1e-9) return null;
    // Under alt nothing is straightened.
    const way = ahead.reason === 'free' ? scale(toward, 1 / shown) : meantWay(toward, ways());
    return tidy(add(from, scale(way, bench.parseLength(typing.text) ?? shown)));
  };

  const fix = () => {
    if (bench.parseLength(typing.text) === null)
      return bench.say({ kind: 'not-a-length', text: typing.text });
    const at = next();
    if (at) place(at);
  };

  const tool: Tool = {
    cursor: 'crosshair',
    down: (aim) => tool.move(aim),
    move(aim) {
      ahead = snapped(aim);
      bench.redrawOverlay();
    },
    up(aim) {
      ahead = snapped(aim);
      place(ahead.at);
      bench.redrawOverlay();
    },
    doubleClick: () => void (plan().most === Infinity && finish()),
    key(input: KeyInput) {
      if (corners.length === 0) return false;
      if (input.key === 'Enter') {
        if (typing.text !== '') fix();
        else finish();
      } else if (input.key === 'Backspace' && typing.text === '') tool.stepBack!();
      else if (!typing.key(input)) return false;
      bench.redrawOverlay();
      return true;
    },
    stepBack() {
      if (corners.length === 0) return false;
      typing.clear();
      corners = corners.slice(0, -1);
      bench.redrawOverlay();
      return true;
    },
    // Two fingers that move the paper must not cost the corners that are set.
    lose() {
      ahead = null;
      bench.redrawOverlay();
    },
    cancel() {
      if (corners.length === 0) return false;
      if (typing.text !== '') typing.clear();
      else reset();
      bench.redrawOverlay();
      return true;
    },
    marks() {
      const marks: Mark[] = [];
      const { closed } = plan();
      const at = next();
      const points = at ? [...corners, at] : corners;
      if (corners.length > 0) {
        const broken =
          closed && points.length > 3 && distance(points.at(-1)!, points[0]!) > 1e-6 && selfCrossing(points);
        if (closed && points.length > 2)
          marks.push({ mark: 'ring', points, state: broken ? 'broken' : 'drawing' });
        else marks.push({ mark: 'path', points, closed: false });
        for (const corner of corners) marks.push({ mark: 'corner', at: corner, snapped: false });
      }
      const from = corners.at(-1);
      if (from && at && distance(from, at) > 1e-6) {
        const text = typing.text === '' ? bench.lengthText(distance(from, at)) : `${typing.text}|`;
        marks.push({ mark: 'length', from, to: at, text });
      }
      if (ahead && at) {
        const typed = typing.text !== '';
        if (!typed) for (const guide of ahead.guides) marks.push({ mark: 'guide', ...guide });
        const snapped = !typed && (ahead.reason === 'corner' || ahead.reason === 'wall');
        marks.push({ mark: 'corner', at, snapped });
      }
      return marks;
    },
  };
  return tool;
}
