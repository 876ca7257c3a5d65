import { fieldsOf } from '../dose/fieldAt';
import { groundsOf, planOf } from './plan';
import { LEAST_LANDING, LEAST_PATH, type RuleSettings } from './ruleSettings';
import { peopleOf } from '../dose/pieceDose';
import { solve } from './solve';
import type { ArrangePiece, ArrangeRequest } from './request';

/** What a rule costs: the planned dose of the home (µT·h a day, mean over its people) that could be saved without it. */
export interface RulePrice {
  rule: keyof RuleSettings | 'strips';
  /** The piece whose strips they are. */
  piece: string | null;
  /** Null where the pieces do not fit with the rule. */
  saves: number | null;
}

const LOWEST_STRIP = 0.45;

/** Each rule at its least; what has no least is switched off. */
const WITHOUT: readonly [keyof RuleSettings, Partial<RuleSettings>][] = [
  ['landing', { landing: LEAST_LANDING }],
  ['path', { path: LEAST_PATH }],
  ['wardrobe', { wardrobe: 0 }],
  ['bedToRadiator', { bedToRadiator: 0 }],
  ['headClearOfWindow', { headClearOfWindow: false }],
  ['oneDouble', { oneDouble: false }],
  ['deskSideways', { deskSideways: true }],
];

/**
 * The price of every rule that a person may lower, each by itself lowered as far as it may be and the home arranged anew;
 * dearest first. What is safe for a cot and open for an escape has no price.
 */
export function pricesOf(request: ArrangeRequest): RulePrice[] {
  const ground = groundsOf(request, fieldsOf(request.fitted));
  const people = Math.max(1, peopleOf(request.pieces.flatMap(({ uses }) => uses)));
  const least = (asked: ArrangeRequest) => {
    const plan = planOf(asked, ground);
    return plan.blocked.length > 0
      ? Infinity
      : solve(plan, asked.step, { budget: asked.budget }).cost / people;
  };
  const now = least(request);
  const saved = (asked: ArrangeRequest): number | null => {
    if (now === Infinity) return null;
    // Whatever was allowed is allowed still: less than nothing is rounding.
    return Math.max(0, now - least(asked));
  };
  const rules = WITHOUT.filter(([rule, lower]) => request.rules[rule] !== lower[rule]).map(
    ([rule, lower]): RulePrice => ({
      rule,
      piece: null,
      saves: saved({ ...request, rules: { ...request.rules, ...lower } }),
    }),
  );
  const strips = request.pieces
    .filter((piece) => !piece.locked && Math.max(...Object.values(piece.access)) > LOWEST_STRIP)
    .map((piece): RulePrice => ({
      rule: 'strips',
      piece: piece.id,
      saves: saved({
        ...request,
        pieces: request.pieces.map((one) => (one === piece ? lowest(piece) : one)),
      }),
    }));
  return [...rules, ...strips].sort((a, b) => (b.saves ?? 0) - (a.saves ?? 0));
}

const lowest = (piece: ArrangePiece): ArrangePiece => ({
  ...piece,
  access: {
    left: Math.min(piece.access.left, LOWEST_STRIP),
    right: Math.min(piece.access.right, LOWEST_STRIP),
    foot: Math.min(piece.access.foot, LOWEST_STRIP),
  },
});
