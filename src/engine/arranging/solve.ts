import { AS_FOUND, type Candidate } from './candidates';
import { assignRooms, type Assigned } from './assignRooms';
import { effortWithin, type Limits } from './effort';
import { isMarked } from './sets';
import { slide } from './slide';
import { worstOff } from './worstOff';
import type { Domain } from './roomValues';
import type { Plan } from './plan';

/** What the best choice of a plan costs. */
export interface Searched {
  /** The choice itself, one candidate a piece in the order of the hands, refined when asked for; null where none was met. */
  choose(): Candidate[] | null;
  /**
   * Least planned dose met, before places were refined and pieces left alone: µT·h, summed over users; for the worst off, the
   * largest of a person and a thousandth of the mean.
   */
  cost: number;
  /** No choice among the places tried has a lower one; it is the cost where the answer is proven. */
  bound: number;
  proven: boolean;
}

/** The best choice of a plan. */
export interface Solved extends Omit<Searched, 'choose'> {
  chosen: Candidate[] | null;
}

/** Places of some pieces that alone are wanted; the name tells the wish from others for the same piece. */
export type Wishes = ReadonlyMap<number, { name: string; wanted: (candidate: Candidate) => boolean }>;

/** The best of the wanted places, refined along the walls (see `search`). */
export function solve(...asked: Parameters<typeof search>): Solved {
  const { choose, ...searched } = search(...asked);
  return { ...searched, chosen: choose() };
}

/**
 * The best of the wanted places. Preferences hold for every piece that has a place which keeps them; where that leaves no
 * choice, they give way for all. What is chosen is then refined along the walls; nothing is carried about for nothing: see
 * `leftAlone`.
 */
export function search(
  plan: Plan,
  step: number,
  limits: Limits,
  wishes: Wishes = new Map(),
  met?: (cost: number) => void,
): Searched {
  const { hands, values } = plan;
  const rooms = hands[0]?.rooms.length ?? 0;
  const effort = effortWithin(limits);
  const domainOf = (piece: number, strict: boolean, held: boolean): Domain => {
    const { name, wanted } = wishes.get(piece) ?? ANYWHERE;
    const full = `${name}${strict ? ' tidy' : ''}${held ? ' held' : ''}`;
    return values.domain(
      piece,
      full,
      (candidate) => wanted(candidate) && (!strict || isTidy(candidate)) && (!held || stays(candidate)),
    );
  };
  const among = (domains: Domain[], options: SearchOptions): Assigned =>
    plan.aim === 'worst-off'
      ? worstOff(hands, domains, values, effort, options)
      : assignRooms(rooms, domains, values, effort, options);
  const canKeep = hands.map((_, piece) => standsSomewhere(plan, piece, domainOf(piece, true, false)));
  const attempt = (strict: boolean, held: ReadonlySet<number>, cutoff?: number): Assigned =>
    among(
      hands.map((_, piece) => domainOf(piece, strict && canKeep[piece], held.has(piece))),
      { cutoff, met: held.size === 0 ? met : undefined },
    );

  const strict = attempt(true, new Set());
  const gaveWay = !strict.chosen && isProven(strict);
  const found = gaveWay ? attempt(false, new Set()) : strict;
  const proven = isProven(found);
  return {
    choose() {
      const calm = proven
        ? leftAlone(plan, found, (held, most) => attempt(!gaveWay, held, most))
        : found.chosen;
      const chosen = calm?.map(({ room, candidate }, piece) => hands[piece].rooms[room][candidate]) ?? null;
      return chosen && slide(plan, chosen, step, plan.aim === 'worst-off');
    },
    cost: found.cost,
    bound: found.bound,
    proven,
  };
}

type SearchOptions = NonNullable<Parameters<typeof worstOff>[4]>;

const ANYWHERE = { name: 'anywhere', wanted: () => true };

const isTidy = ({ breaks }: Candidate): boolean => breaks.length === 0;
const stays = ({ wall }: Candidate): boolean => wall === AS_FOUND;
const isProven = ({ cost, bound }: Assigned): boolean => bound >= cost;

/** Whether a piece has a place of a domain with nothing else about. */
function standsSomewhere({ values, hands }: Plan, piece: number, { open }: Domain): boolean {
  return open.some((marks, room) =>
    hands[piece].rooms[room].some((_, i) => isMarked(marks, i) && values.stands(piece, room, i)),
  );
}

/** A gain of the whole under this share is worth no piece's way: the project's choice. */
export const WORTHLESS = 0.01;

/**
 * Of the choices within a hundredth of the least, one that leaves pieces where they are: as long as some moved piece can
 * be held there, the one that costs least to hold is. `holding` gives the best choice with those pieces where they stand.
 */
function leftAlone(
  { hands }: Plan,
  found: Assigned,
  holding: (held: ReadonlySet<number>, most: number) => Assigned,
): Assigned['chosen'] {
  // Equal to the least is within a hundredth too, where the least is nothing.
  const most = found.cost * (1 + WORTHLESS) + Number.MIN_VALUE;
  let held: ReadonlySet<number> = new Set();
  for (let best = found.chosen; ;) {
    const options = (best ?? []).flatMap(({ room, candidate }, piece) => {
      if (stays(hands[piece].rooms[room][candidate])) return [];
      const { chosen, cost } = holding(new Set([...held, piece]), most);
      return chosen ? [{ piece, chosen, cost }] : [];
    });
    if (options.length === 0) return best;
    const calmest = options.reduce((a, b) => (b.cost < a.cost ? b : a));
    held = new Set([...held, calmest.piece]);
    best = calmest.chosen;
  }
}
