import type { Home, Piece } from '../home/home';
import type { ProposalState } from './editor';
import { homeAsked } from './homeAsked';
import { placesShown } from './placesShown';

/**
 * The home as the answer that is looked at would have it: every piece where it is shown, and as little asked for as the answer
 * needs; the home itself where that changes nothing.
 */
export function homeShown(
  asFound: Home,
  state: Pick<ProposalState, 'proposal' | 'shown' | 'adjusted'>,
): Home {
  const home = homeAsked(asFound, state);
  const moved = placesShown(home, state).flatMap(({ id, level, at, angle }): Piece[] => {
    const piece = home.pieces[id]!;
    const stays = piece.level === level && piece.at === at && piece.angle === angle;
    return stays ? [] : [{ ...piece, level, at, angle }];
  });
  if (moved.length === 0) return home;
  return {
    ...home,
    pieces: { ...home.pieces, ...Object.fromEntries(moved.map((piece) => [piece.id, piece])) },
  };
}
