import type { Assessment } from '../../engine/assess';
import type { Proposal } from '../../engine/arranging/arrange';
import type { Home } from '../../home/home';
import type { ArrangeWishes } from '../../home/questions/arrangeQuestion';
import { homeAsFound } from '../../home/questions/asFound';
import type { FurnitureChange } from '../../words/furniture';

/**
 * The change the report tells: the proposal at hand; where none is, or it moves nothing, what has come of those that were
 * taken; null without either.
 */
export function furnitureChange(
  home: Home,
  assessment: Assessment | null,
  proposal: Proposal | null,
  aim: ArrangeWishes['aim'],
): FurnitureChange | null {
  const since = assessment?.sinceFound ?? null;
  if (proposal && (!since || proposal.pieces.some(({ moves }) => moves)))
    return { home, answer: proposal, about: proposal.about, proposal, aim };
  return since && { home: homeAsFound(home), answer: since, about: null, proposal: null, aim: 'mean' };
}
