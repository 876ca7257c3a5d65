import { giveUp } from '../home/edits/giveUp';
import type { Home } from '../home/home';
import type { ProposalState } from './editor';
import { tryEdit } from './store';

/** The home with what the answer looked at gives up, so that furniture fits: itself, where that is nothing. */
export function homeAsked(home: Home, { proposal, shown }: Pick<ProposalState, 'proposal' | 'shown'>): Home {
  if (shown !== 'relaxed' || !proposal?.relaxed) return home;
  const less = tryEdit(home, giveUp(proposal.relaxed.changes));
  return 'change' in less ? less.change.home : home;
}
