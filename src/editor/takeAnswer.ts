import type { FittedSurvey } from '../engine/mapping/fitSurvey';
import { takePlaces } from '../home/edits/takePlaces';
import type { Edit } from '../home/edits/edit';
import type { Home } from '../home/home';
import type { Problem } from '../home/problem';
import { arrangeQuestion } from '../home/questions/arrangeQuestion';
import { usesChangedBy } from '../home/questions/openPlan';
import type { Here } from './compute/loadHere';
import type { ProposalState } from './editor';
import { shownAnswer } from './shownAnswer';

/**
 * The edit that puts the pieces where the shown answer has them and keeps how they stood, or why not: a stale answer speaks of another home, and no
 * place is taken that breaks a rule the planner did not name.
 */
export function takeAnswer(
  state: ProposalState,
  home: Home,
  fitted: FittedSurvey | null,
  engine: Here | null,
): { edit: Edit } | { problem: Problem } {
  const answer = shownAnswer(state);
  if (!answer || state.stale || !fitted || !engine) return { problem: { kind: 'proposal-stale' } };
  const request = arrangeQuestion(home, fitted, state.wishes);
  const places = answer.pieces.map(({ id, level, at, angle }) => ({ id, level, at, angle }));
  for (const { id, level, at, angle, breaks, moves } of answer.pieces) {
    if (!moves) continue;
    const rules = engine
      .brokenRules(request, { id, level, at, angle }, places)
      .filter((rule) => !breaks.some((named) => named.kind === rule.kind));
    if (rules.length > 0) return { problem: { kind: 'rules-broken', id, rules } };
  }
  const moved = places.filter((_, i) => answer.pieces[i]!.moves);
  return { edit: takePlaces(moved, state.wishes.open ? usesChangedBy(home, moved) : []) };
}
