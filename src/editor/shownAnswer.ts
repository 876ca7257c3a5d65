import type { Answer } from '../engine/arranging/arrange';
import type { ReadingPlace } from '../engine/arranging/placesToRead';
import type { ProposalState } from './editor';

type Looked = Pick<ProposalState, 'proposal' | 'shown'>;

/** The answer that is looked at as the planner has it: the best, one of the others, or the one that gives something up. */
export function plannersAnswer({ proposal, shown }: Looked): Answer | null {
  if (!proposal) return null;
  if (shown === 'relaxed') return proposal.relaxed?.answer ?? null;
  return shown === 0 ? proposal : (proposal.alternatives[shown - 1] ?? null);
}

/** The answer that is looked at as it stands, with what was put elsewhere by hand. */
export const shownAnswer = (state: Looked & Pick<ProposalState, 'adjusted'>): Answer | null =>
  state.adjusted?.answer ?? plannersAnswer(state);

/** Where to read before deciding, where the answer that is looked at says so. */
export function readFirst(state: Looked & Pick<ProposalState, 'adjusted'>): readonly ReadingPlace[] {
  const answer = shownAnswer(state);
  return answer?.decision === 'measure-both' ? answer.readAt : [];
}
