import type { ArrangeRequest } from '../engine/arranging/request';
import type { FittedSurvey } from '../engine/mapping/fitSurvey';
import type { Home } from '../home/home';
import { arrangeQuestion } from '../home/questions/arrangeQuestion';
import type { ProposalState } from './editor';
import { homeAsked } from './homeAsked';

/** The question that is answered by the answer looked at: the home's own, or one that asks for as much less as this one needs. */
export const questionShown = (
  home: Home,
  fitted: FittedSurvey,
  state: Pick<ProposalState, 'proposal' | 'shown' | 'wishes'>,
): ArrangeRequest => arrangeQuestion(homeAsked(home, state), fitted, state.wishes);
