import { inOrder } from '../order';
import { openPlan } from './openPlan';
import type { ArrangeRequest } from '../../engine/arranging/request';
import type { FittedSurvey } from '../../engine/mapping/fitSurvey';
import type { RuleQuestion } from '../../engine/arranging/ruleBook';
import type { Home, Room } from '../home';

/** Metres between places tried along a wall; the best is refined afterwards. */
const STEP = 0.1;

/** Nodes of one search: some seconds. */
const BUDGET = 2_000_000;

/** The rooms furniture may stand in. */
export const indoorsOf = (home: Home): Room[] => inOrder(home.rooms).filter(({ use }) => use !== 'grounds');

/**
 * How a person wants furniture arranged: on the upper end of the interval, and for all or for the worst off; `open`: any living,
 * working or sleeping room may be slept in.
 */
export type ArrangeWishes = Pick<ArrangeRequest, 'cautious' | 'aim'> & { open?: boolean };

/** What the rules of a livable room are asked about in a home. Nobody sleeps in the grounds. */
export const ruleQuestion = (home: Home): RuleQuestion => ({
  rooms: indoorsOf(home),
  openings: inOrder(home.openings),
  fixtures: inOrder(home.fixtures),
  pieces: inOrder(home.pieces),
  rules: home.settings.rules,
});

/** The question a home puts to the planner, over the map of one round. */
export function arrangeQuestion(
  home: Home,
  fitted: FittedSurvey,
  { cautious, aim, open = false }: ArrangeWishes,
): ArrangeRequest {
  return {
    ...ruleQuestion(open ? openPlan(home) : home),
    fitted,
    aim,
    cautious,
    step: STEP,
    budget: BUDGET,
  };
}
