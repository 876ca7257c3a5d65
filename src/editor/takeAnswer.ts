import { placePieces } from '../home/edits/placePieces';
import type { Edit } from '../home/edits/edit';
import type { Problem } from '../home/problem';
import type { ProposalState } from './editor';

/** Puts the pieces where the shown answer has them, as one step. A stale answer speaks of another home and is refused. */
export function takeAnswer(
  { proposal, stale, shown }: ProposalState,
  run: (edit: Edit) => Problem | null,
): Problem | null {
  if (!proposal || stale) return { kind: 'proposal-stale' };
  const answer = shown === 0 ? proposal : proposal.alternatives[shown - 1];
  if (!answer) return { kind: 'proposal-stale' };
  const moves = answer.pieces.filter(({ moves }) => moves);
  return run(placePieces(moves.map(({ id, level, at, angle }) => ({ id, level, at, angle }))));
}
