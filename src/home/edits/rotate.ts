import { bounds } from '../../engine/geometry/polygon';
import { forEachThing, thingAt } from './onPlan';
import { withWhatStandsIn } from './whatStandsIn';
import type { Home, Point, Ref } from '../home';
import type { Edit } from './edit';

/** The middle of everything that is turned together. */
function middleOf(home: Home, refs: readonly Ref[]): Point {
  const points = refs.flatMap((ref) => {
    const found = thingAt(home, ref);
    return found.ok ? found.kind.shape(home, found.thing).points : [];
  });
  const { x0, y0, x1, y1 } = bounds(points);
  return [(x0 + x1) / 2, (y0 + y1) / 2];
}

/**
 * Turns things of the plan together, a room with what stands in it, degrees counter-clockwise, about a point or else
 * about their middle.
 */
export function rotate(refs: readonly Ref[], degrees: number, about?: Point): Edit {
  return {
    name: 'Turn',
    apply(draft) {
      const centre = about ?? middleOf(draft, refs);
      return forEachThing(draft, withWhatStandsIn(draft, refs), (kind, thing) =>
        kind.turn(draft, thing, degrees, centre),
      );
    },
  };
}
