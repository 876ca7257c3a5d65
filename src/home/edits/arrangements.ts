import { newId } from '../ids';
import { inOrder } from '../order';
import { put } from './check';
import { placePieces } from './placePieces';
import { missing } from './target';
import type { Id } from '../home';
import type { Edit } from './edit';

/** Keeps where the pieces stand now, under a name, to be compared with other arrangements. */
export function keepArrangement(name: string): Edit {
  return {
    name: 'Keep arrangement',
    apply(draft) {
      const id = newId(draft, 'arrangements');
      const pieces = inOrder(draft.pieces).map((piece) => ({
        id: piece.id,
        level: piece.level,
        at: piece.at,
        angle: piece.angle,
      }));
      const sources = inOrder(draft.sources).map((source) => ({ id: source.id, scale: 1 }));
      draft.arrangements[id] = { id, name: '', pieces, sources };
      return put(draft, 'arrangements', id, { name }) ?? undefined;
    },
  };
}

/** Puts the pieces back where an arrangement has them; pieces that came later stay where they are. */
export function useArrangement(id: Id): Edit {
  return {
    name: 'Use arrangement',
    apply(draft) {
      const lost = missing(draft, { collection: 'arrangements', id });
      return lost ?? placePieces(draft.arrangements[id]!.pieces).apply(draft);
    },
  };
}
