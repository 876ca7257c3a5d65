import { asFound, AS_FOUND } from '../questions/asFound';
import { differences } from '../questions/differences';
import { keepArrangement } from './arrangements';
import { missing } from './target';
import { placePieces, type Place } from './placePieces';
import { put } from './check';
import type { Arrangement, Id } from '../home';
import type { Edit } from './edit';

/**
 * Moves pieces to the places of a proposal, with rooms used as it has them, all in one step. The first time, how they stood is kept as an
 * arrangement: what was gained is told against it ever after, and the file holds it.
 */
export function takePlaces(places: readonly Place[], rooms: Arrangement['rooms'] = []): Edit {
  const move = placePieces(places);
  return {
    name: move.name,
    apply(draft) {
      if (!asFound(draft) && places.length + rooms.length > 0) keepArrangement(AS_FOUND).apply(draft);
      for (const { id, use } of rooms) {
        const problem = missing(draft, { collection: 'rooms', id }) ?? put(draft, 'rooms', id, { use });
        if (problem) return problem;
      }
      return move.apply(draft);
    },
  };
}

/**
 * Puts the pieces where an arrangement has them, with rooms used as it has them; pieces that came later stay where they are. Its
 * sources stay as they are in the home: what a source gives is not the plan's to change.
 */
export function useArrangement(id: Id): Edit {
  return {
    name: 'Use arrangement',
    apply(draft) {
      const lost = missing(draft, { collection: 'arrangements', id });
      if (lost) return lost;
      const { pieces, rooms } = differences(draft, draft.arrangements[id]!);
      return takePlaces(pieces, rooms).apply(draft);
    },
  };
}
