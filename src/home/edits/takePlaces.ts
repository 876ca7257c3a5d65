import { asFound, AS_FOUND } from '../questions/asFound';
import { keepArrangement } from './arrangements';
import { placePieces, type Place } from './placePieces';
import type { Edit } from './edit';

/**
 * Moves pieces to the places of a proposal, all in one step. The first time, how they stood is kept as an arrangement: what
 * was gained is told against it ever after, and the file holds it.
 */
export function takePlaces(places: readonly Place[]): Edit {
  const move = placePieces(places);
  return {
    name: move.name,
    apply: (draft) =>
      (asFound(draft) || places.length === 0 ? undefined : keepArrangement(AS_FOUND).apply(draft)) ??
      move.apply(draft),
  };
}
