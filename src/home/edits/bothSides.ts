import { ACCESS_BESIDE, sleepsOnBothSides } from '../kindDefaults';
import type { Home, Id } from '../home';

/** Whoever sleeps on a side of a bed gets out there: where both halves come to be used, neither side stays without access. */
export function giveBothSides(draft: Home, id: Id): void {
  const piece = draft.pieces[id]!;
  if (!sleepsOnBothSides(piece.kind, piece.uses)) return;
  for (const side of ['left', 'right'] as const)
    if (piece.access[side] === 0) piece.access[side] = ACCESS_BESIDE;
}
