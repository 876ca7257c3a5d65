import { bounds } from '../../engine/geometry/polygon';
import { rectangle } from '../../engine/geometry/pose';
import { KINDS } from '../kinds/kinds';
import { roomAt } from '../questions/roomAt';
import { forEachThing, putThing, thingAt } from './onPlan';
import { liesInside, slideInside } from './slideInside';
import { withWhatStandsIn } from './whatStandsIn';
import type { Home, Id, Piece, Point, Ref } from '../home';
import type { Problem } from '../problem';
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

/** A piece that stood inside its room is slid out of the walls that it was turned into. */
function slideOffWalls(draft: Home, id: Id, before: Piece): Problem | null {
  const room = roomAt(draft, before.level, before.at);
  if (!room || !liesInside(rectangle(before, before.size), room.outline)) return null;
  const turned = draft.pieces[id]!;
  const shift = slideInside(rectangle(turned, turned.size), room.outline);
  if (!shift) return null;
  return putThing(draft, { kind: 'piece', id }, KINDS.piece.drag(draft, turned, shift));
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
      const [only] = refs;
      const piece = refs.length === 1 && only!.kind === 'piece' ? draft.pieces[only!.id] : undefined;
      const before = piece && ({ ...piece } as Piece);
      const problem = forEachThing(draft, withWhatStandsIn(draft, refs), (kind, thing) =>
        kind.turn(draft, thing, degrees, centre),
      );
      return problem ?? (before && slideOffWalls(draft, before.id, before)) ?? undefined;
    },
  };
}
