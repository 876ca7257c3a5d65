import { forEachThing } from './onPlan';
import { withWhatStandsIn } from './whatStandsIn';
import type { Point, Ref } from '../home';
import type { Edit } from './edit';

/** Moves things of the plan together, a room with what stands in it. */
export function moveBy(refs: readonly Ref[], delta: Point): Edit {
  return {
    name: 'Move',
    apply: (draft) =>
      forEachThing(draft, withWhatStandsIn(draft, refs), (kind, thing) => kind.drag(draft, thing, delta)),
  };
}
