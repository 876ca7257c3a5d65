import { sub } from '../../engine/geometry/point';
import { moveBy } from '../../home/edits/moveBy';
import { withWhatStandsIn } from '../../home/edits/whatStandsIn';
import type { Point, Ref } from '../../home/home';
import { tidy } from '../../home/kinds/tidy';
import type { Mark } from '../editor';
import { snapScene } from '../snapping/candidates';
import { snapMove } from '../snapping/snapMove';
import { kindOf, thingOf } from '../things';
import type { Aim, Bench, Subject } from './tool';

/** Drags one thing or several of the home, or of the answer looked at, as one, always from where they stood at the start. */
export function createDrag({ view }: Pick<Bench, 'view'>, subject: Subject, refs: readonly Ref[], from: Aim) {
  const start = subject.home;
  // What goes along is nothing to snap to.
  const scene = snapScene(start, view, withWhatStandsIn(start, refs));
  const points: Point[] = refs.flatMap((ref) => {
    const thing = thingOf(start, ref);
    return thing ? [...kindOf(ref).snaps(start, thing).points] : [];
  });
  // Readings stand where they were taken: nothing pulls at them.
  const pulled = refs.some(({ kind }) => kind !== 'reading');
  let guides: { from: Point; to: Point }[] = [];
  subject.mark('Move');
  return {
    move(aim: Aim) {
      const wish = sub(aim.at, from.at);
      const snapped = pulled ? snapMove(scene, points, wish, aim.pull) : { delta: tidy(wish), guides: [] };
      guides = snapped.guides;
      subject.redraw(moveBy(refs, snapped.delta));
    },
    marks: (): Mark[] => guides.map(({ from: a, to: b }) => ({ mark: 'guide', from: a, to: b })),
  };
}
