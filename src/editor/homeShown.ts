import type { Home, Piece } from '../home/home';
import type { ProposalState } from './editor';
import { placesShown } from './placesShown';

/** The home with every piece where it is shown while an answer is looked at; the home itself where none moves. */
export function homeShown(home: Home, state: Pick<ProposalState, 'proposal' | 'shown' | 'adjusted'>): Home {
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
