import type { Answer } from '../engine/arranging/arrange';
import type { ProposalState } from './editor';

/** The answer that is looked at: the best, or one of the others. */
export function shownAnswer({ proposal, shown }: Pick<ProposalState, 'proposal' | 'shown'>): Answer | null {
  if (!proposal) return null;
  return shown === 0 ? proposal : (proposal.alternatives[shown - 1] ?? null);
}
