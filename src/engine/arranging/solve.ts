import { AS_FOUND, type Candidate } from './candidates';
import { search, type Found, type Limits } from './search';
import { slide } from './slide';
import type { Hand, Plan } from './plan';

/** The best choice of a plan, one candidate a piece in the order of its hands; null where none was met. */
export interface Solved {
  chosen: Candidate[] | null;
  /** Least planned dose met, before places were refined and pieces left alone: µT·h, summed over users. */
  cost: number;
  proven: boolean;
}

type Allowed = (piece: number, candidate: number) => boolean;

/**
 * The best of the `wanted` places, then refined along the walls. Preferences hold for every piece that has a place which
 * keeps them; where that leaves no choice, they give way for all. Nothing is carried about for nothing: see `leftAlone`.
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
  const allowed =
    (strict: boolean): Allowed =>
    (piece, i) => {
      const candidate = hands[piece].candidates[i];
      return wanted(hands[piece], candidate) && (!strict || !canKeep[piece] || keeps(candidate));
    };
  const attempt = (places: Allowed) => search(costs, compatible, limits, places);

  const strict = attempt(allowed(true));
  const gaveWay = !strict.chosen && strict.proven;
  const found = gaveWay ? attempt(allowed(false)) : strict;
  const calm = leftAlone(hands, found, (held) =>
    attempt((piece, i) => allowed(!gaveWay)(piece, i) && (!held(piece) || stays(hands[piece].candidates[i]))),
  );
  const chosen = calm?.map((index, piece) => hands[piece].candidates[index]) ?? null;
  return { chosen: chosen && slide(plan, chosen, step), cost: found.cost, proven: found.proven };
}

const stays = ({ wall }: Candidate): boolean => wall === AS_FOUND;

// A gain of the whole under this share is worth no piece's way: the project's choice.
const WORTHLESS = 0.01;

/**
 * Of the choices within a hundredth of the least, one that leaves pieces where they are: as long as some moved piece can
 * be held there, the one that costs least to hold is. `holding` gives the best choice with those pieces where they stand.
 */
function leftAlone(
  hands: readonly Hand[],
  found: Found,
  holding: (held: (piece: number) => boolean) => Found,
): number[] | null {
  if (!found.chosen || !found.proven) return found.chosen;
  const most = found.cost * (1 + WORTHLESS);
  const held = new Set<number>();
  for (let best = found.chosen; ;) {
    const options = best.flatMap((candidate, piece) => {
      if (stays(hands[piece].candidates[candidate])) return [];
      const { chosen, cost } = holding((one) => one === piece || held.has(one));
      return chosen && cost <= most ? [{ piece, chosen, cost }] : [];
    });
    if (options.length === 0) return best;
    const calmest = options.reduce((a, b) => (b.cost < a.cost ? b : a));
    held.add(calmest.piece);
    best = calmest.chosen;
  }
}
