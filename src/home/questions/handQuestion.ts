import { roomAt } from './roomAt';
import { ruleQuestion } from './arrangeQuestion';
import { suits, type ArrangePiece } from '../../engine/arranging/request';
import type { RuleQuestion } from '../../engine/arranging/ruleBook';
import type { Home, Piece } from '../home';

/**
 * What is asked of rooms and rules for a piece that a hand carries about. Where it stands is no part of it, so that the
 * question stays the same on the way: it may stand where it is told, or else in rooms that suit it and in the one it is in.
 */
export function handQuestion(home: Home, piece: Piece): RuleQuestion {
  const question = ruleQuestion(home);
  const here = roomAt(home, piece.level, piece.at)?.id;
  const mayStandIn =
    piece.mayStandIn ??
    question.rooms.filter(({ id, use }) => id === here || suits(piece.kind, use)).map(({ id }) => id);
  const anywhere: ArrangePiece = { ...piece, at: [0, 0], angle: 0, mayStandIn };
  return { ...question, pieces: question.pieces.map((one) => (one.id === piece.id ? anywhere : one)) };
}
