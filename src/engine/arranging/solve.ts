import { search, type Limits } from './search';
import { slide } from './slide';
import type { Candidate } from './candidates';
import type { Hand, Plan } from './plan';

/** The best choice of a plan, one candidate a piece in the order of its hands; null where none was met. */
export interface Solved {
  chosen: Candidate[] | null;
  /** Of its planned dose, before places were refined: µT·h, summed over users. */
  cost: number;
  proven: boolean;
}

/**
 * The best of the `wanted` places, then refined along the walls. Preferences hold for every piece that has a place which
 * keeps them; where that leaves no choice, they give way for all.
 */
export function solve(
  plan: Plan,
  step: number,
  limits: Limits,
  wanted: (hand: Hand, candidate: Candidate) => boolean = () => true,
): Solved {
  const { hands, compatible } = plan;
  const costs = hands.map(({ candidates }) => candidates.map(({ cost }) => cost));
  const keeps = ({ breaks }: Candidate) => breaks.length === 0;
  const canKeep = hands.map((hand) => hand.candidates.some((c) => keeps(c) && wanted(hand, c)));
  const attempt = (strict: boolean) =>
    search(costs, compatible, limits, (piece, i) => {
      const candidate = hands[piece].candidates[i];
      return wanted(hands[piece], candidate) && (!strict || !canKeep[piece] || keeps(candidate));
    });

  const strict = attempt(true);
  const found = strict.chosen || !strict.proven ? strict : attempt(false);
  const chosen = found.chosen?.map((index, piece) => hands[piece].candidates[index]) ?? null;
  return { chosen: chosen && slide(plan, chosen, step), cost: found.cost, proven: found.proven };
}
