import { forEachThing } from './onPlan';
import type { Point, Ref } from '../home';
import type { Edit } from './edit';

/** Moves things of the plan together. */
export function moveBy(refs: readonly Ref[], delta: Point): Edit {
  return {
    name: 'Move',
    apply: (draft) => forEachThing(draft, refs, (kind, thing) => kind.drag(draft, thing, delta)),
  };
}
