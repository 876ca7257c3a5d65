import type { Answer, PlacedPiece } from '../engine/arranging/arrange';
import type { ArrangeRequest } from '../engine/arranging/request';
import { giveUp } from '../home/edits/giveUp';
import { takePlaces } from '../home/edits/takePlaces';
import type { Edit } from '../home/edits/edit';
import type { Home, Id } from '../home/home';
import type { Problem } from '../home/problem';
import { usesChangedBy } from '../home/questions/openPlan';
import type { Here } from './compute/loadHere';
import type { ProposalState } from './editor';
import { shownAnswer } from './shownAnswer';

/**
 * The edit that puts the pieces where the shown answer has them, gives up what it gives up for that, and keeps how they stood;
 * or why not. A stale answer speaks of another home. Of the planner's own places none is taken that the second look found
 * fault with, or that breaks a rule the planner did not name; what was put by hand is taken as it is.
 */
export function takeAnswer(
  state: ProposalState,
  home: Home,
  question: ArrangeRequest | null,
  engine: Here | null,
): { edit: Edit } | { problem: Problem } {
  const answer = shownAnswer(state);
  if (!answer || state.stale || !question || !engine) return { problem: { kind: 'proposal-stale' } };
  const problem = state.adjusted ? null : faultOf(answer, home, question, engine);
  if (problem) return { problem };
  const moved = answer.pieces.filter(({ moves }) => moves).map(placeOf);
  const places = takePlaces(moved, state.wishes.open ? usesChangedBy(home, moved) : []);
  if (state.shown !== 'relaxed') return { edit: places };
  const less = giveUp(state.proposal?.relaxed?.changes ?? []);
  return { edit: { name: places.name, apply: (draft) => less.apply(draft) ?? places.apply(draft) } };
}

/** What is wrong with the places of an answer of the planner's own. */
function faultOf(answer: Answer, home: Home, question: ArrangeRequest, engine: Here): Problem | null {
  const faults = answer.faults.map(({ piece: id, rule }) => {
    const room = answer.pieces.find((piece) => piece.id === id)?.room ?? '';
    return { piece: nameOf(home, id), room: home.rooms[room]?.name ?? '', rule };
  });
  if (faults.length > 0) return { kind: 'places-faulty', faults };
  const places = answer.pieces.map(placeOf);
  const rulesAt = engine.brokenRules(question);
  for (const [i, { id, breaks, moves }] of answer.pieces.entries()) {
    if (!moves) continue;
    const rules = rulesAt(places[i]!, places).filter(
      (rule) => !breaks.some((named) => named.kind === rule.kind),
    );
    if (rules.length === 0) continue;
    const named = rules.map((rule) => ({ ...rule, with: (rule.with && nameOf(home, rule.with)) || null }));
    return { kind: 'rules-broken', piece: nameOf(home, id), rules: named };
  }
  return null;
}

const placeOf = ({ id, level, at, angle }: PlacedPiece) => ({ id, level, at, angle });

const nameOf = (home: Home, id: Id): string => (home.pieces[id] ?? home.fixtures[id])?.name ?? '';
