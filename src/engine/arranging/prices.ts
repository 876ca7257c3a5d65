import { fieldsOf } from '../dose/fieldAt';
import { groundsOf, planOf } from './plan';
import { LEAST_LANDING, LEAST_PATH, type RuleSettings } from './ruleSettings';
import { peopleOf } from '../dose/pieceDose';
import { solve, WORTHLESS } from './solve';
import type { ArrangePiece, ArrangeRequest } from './request';

/** What a rule costs: the planned dose of the home (µT·h a day, as its aim counts it) that could be saved without it. */
export interface RulePrice {
  rule: keyof RuleSettings | 'strips';
  /** The piece whose strips they are. */
  piece: string | null;
  /** 0 where it is under a hundredth of the whole; null where the pieces do not fit with the rule. */
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
 * dearest first. What is safe for a cot and open for an escape has no price. `progress` is told the share done, 0…1.
 */
export function pricesOf(request: ArrangeRequest, progress?: (share: number) => void): RulePrice[] {
  const ground = groundsOf(request, fieldsOf(request.fitted));
  const people = Math.max(1, peopleOf(request.pieces.flatMap(({ uses }) => uses)));
  const least = (asked: ArrangeRequest): number => {
    const plan = planOf(asked, ground);
    if (plan.blocked.length > 0) return Infinity;
    const { cost } = solve(plan, asked.step, { budget: asked.budget });
    return asked.aim === 'worst-off' ? cost : cost / people;
  };
  const now = least(request);
  const lowered = [...rulesLowered(request), ...stripsLowered(request)];
  const prices = lowered.map(({ rule, piece, asked }, i): RulePrice => {
    progress?.((i + 1) / (lowered.length + 1));
    if (now === Infinity) return { rule, piece, saves: null };
    // Whatever was allowed is allowed still: less than nothing is rounding.
    const saves = now - least(asked);
    return { rule, piece, saves: saves > WORTHLESS * now ? saves : 0 };
  });
  return prices.sort((a, b) => (b.saves ?? 0) - (a.saves ?? 0));
}

interface Lowered extends Omit<RulePrice, 'saves'> {
  asked: ArrangeRequest;
}

const rulesLowered = (request: ArrangeRequest): Lowered[] =>
  WITHOUT.filter(([rule, lower]) => request.rules[rule] !== lower[rule]).map(([rule, lower]) => ({
    rule,
    piece: null,
    asked: { ...request, rules: { ...request.rules, ...lower } },
  }));

const stripsLowered = (request: ArrangeRequest): Lowered[] =>
  request.pieces
    .filter((piece) => !piece.locked && Math.max(...Object.values(piece.access)) > LOWEST_STRIP)
    .map((piece) => ({
      rule: 'strips',
      piece: piece.id,
      asked: {
        ...request,
        pieces: request.pieces.map((one) => (one === piece ? lowest(piece) : one)),
      },
    }));

const lowest = (piece: ArrangePiece): ArrangePiece => ({
  ...piece,
  access: {
    left: Math.min(piece.access.left, LOWEST_STRIP),
    right: Math.min(piece.access.right, LOWEST_STRIP),
    foot: Math.min(piece.access.foot, LOWEST_STRIP),
  },
});
