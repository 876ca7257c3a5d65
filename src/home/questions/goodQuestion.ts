import type { ArrangeRequest } from '../../engine/arranging/request';
import type { FittedSurvey } from '../../engine/mapping/fitSurvey';
import type { Home, Piece } from '../home';
import { arrangeQuestion, type ArrangeWishes } from './arrangeQuestion';
import { handQuestion } from './handQuestion';
import { openPlan } from './openPlan';

/** What is asked of every place of a piece at the angle it has: not where it stands, so that on its way nothing is asked anew. */
export interface GoodQuestion {
  request: ArrangeRequest;
  id: string;
  angle: number;
}

export const goodQuestion = (
  home: Home,
  piece: Piece,
  fitted: FittedSurvey,
  wishes: ArrangeWishes,
): GoodQuestion => ({
  request: {
    ...arrangeQuestion(home, fitted, wishes),
    ...handQuestion(wishes.open ? openPlan(home) : home, piece),
  },
  id: piece.id,
  angle: piece.angle,
});
