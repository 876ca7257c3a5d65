import type { Put } from '../engine/arranging/place';
import type { Home } from '../home/home';
import { inOrder } from '../home/order';
import type { ProposalState } from './editor';
import { shownAnswer } from './shownAnswer';

/**
 * Where every piece of the home is while an answer is looked at: at its ghost where that is elsewhere than the piece, else
 * where it stands. Only the stage that shows ghosts has a use for it.
 */
export function placesShown(
  home: Pick<Home, 'pieces'>,
  state: Pick<ProposalState, 'proposal' | 'shown' | 'adjusted'>,
): Put[] {
  const ghosts = (shownAnswer(state)?.pieces ?? []).filter(({ moves }) => moves);
  return inOrder(home.pieces).map((piece) => {
    const { id, level, at, angle } = ghosts.find((ghost) => ghost.id === piece.id) ?? piece;
    return { id, level, at, angle };
  });
}
