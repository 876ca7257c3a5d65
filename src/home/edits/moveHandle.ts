import { putThing, thingAt } from './onPlan';
import type { Point, Ref } from '../home';
import type { Edit } from './edit';

/** Puts one handle of a thing somewhere: a corner, a wall, an end, a size, an angle. */
export function moveHandle(ref: Ref, key: string, to: Point): Edit {
  return {
    name: 'Reshape',
    apply(draft) {
      const found = thingAt(draft, ref);
      if (!found.ok) return found.problem;
      return putThing(draft, ref, found.kind.dragHandle(draft, found.thing, key, to)) ?? undefined;
    },
  };
}
