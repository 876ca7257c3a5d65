import type { PieceDose } from '../../engine/assess';
import type { FieldAt } from '../../engine/dose/fieldAt';
import { pieceDose } from '../../engine/dose/pieceDose';
import type { Home, Id, Ref } from '../../home/home';
import { assessPiece } from '../../home/questions/assessPiece';

/** The doses of the pieces under the hand, worked out at once: a few dozen cells each. */
export function liveDoses(fieldAt: FieldAt, home: Home, refs: readonly Ref[]): Record<Id, PieceDose> {
  const doses: Record<Id, PieceDose> = {};
  for (const { kind, id } of refs) {
    const piece = kind === 'piece' ? home.pieces[id] : undefined;
    const dose = piece && pieceDose(fieldAt, assessPiece(piece));
    if (dose) doses[id] = dose;
  }
  return doses;
}
