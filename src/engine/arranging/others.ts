import { AS_FOUND, type Candidate } from './candidates';
import { backWall, type BrokenRule } from './rules';
import { hoursOf, type Hand, type Plan } from './plan';
import type { Searched, Wishes } from './solve';

/** The best arrangement with a piece in one room, or what keeps it out. */
export type InRoom = { room: string; chosen: Candidate[] } | { room: string; blocked: BrokenRule };

/** An answer in which a piece stands in another room, or at another wall of the same, than in the best. */
export interface Other {
  piece: string;
  differs: 'room' | 'wall';
  chosen: Candidate[];
  cost: number;
}

/** Searches the plan with some pieces' places narrowed. */
type SearchFor = (wishes: Wishes) => Searched;

/** Other answers offered beside the best: the project's choice. */
const OTHERS = 4;

/** The piece that matters most: of those slept in, or else of all, the one used for the most hours; null where none is. */
export function mostUsed(hands: readonly Hand[]): Hand | null {
  const used = hands.filter(({ piece }) => hoursOf(piece) > 0);
  const slept = used.filter(isSleptIn);
  const among = slept.length > 0 ? slept : used;
  return among.reduce<Hand | null>(
    (most, hand) => (most && hoursOf(most.piece) >= hoursOf(hand.piece) ? most : hand),
    null,
  );
}

const isSleptIn = ({ piece }: Hand): boolean => piece.kind === 'bed' || piece.kind === 'cot';

/** For one piece, the best in each of its rooms, or what keeps it out; that of its room in `best` is `best`. */
export function inEachRoom(
  plan: Plan,
  { hand, rooms, best }: { hand: Hand; rooms: readonly string[]; best: readonly Candidate[] },
  searchFor: SearchFor,
): (InRoom & { cost: number })[] {
  const index = plan.hands.indexOf(hand);
  return rooms.map((room) => {
    if (best[index].stand.room === room) return { room, chosen: [...best], cost: 0 };
    const { choose, cost } = searchFor(
      new Map([[index, { name: `in ${room}`, wanted: ({ stand }) => stand.room === room }]]),
    );
    const chosen = choose();
    return chosen
      ? { room, chosen, cost }
      : { room, cost, blocked: plan.keptOut(hand.piece.id, room) ?? { kind: 'crowded', with: null } };
  });
}

/** Which rooms and walls the pieces that matter stand at; two arrangements that share them are one to the eye. */
type Part = ReadonlyMap<number, { is: string | null; not: readonly string[] }>;

/**
 * The best arrangements that differ from `best`, and from each other, in the room or the wall of a piece that is slept in
 * (or of the most used): the answers are taken out one by one, what is left is parted by the first piece that differs
 * (Lawler 1972). The best in another room and the best at another wall of the same are always among them.
 */
export function otherAnswers(
  plan: Plan,
  { hand, best, elsewhere }: { hand: Hand; best: readonly Candidate[]; elsewhere: Other | null },
  searchFor: SearchFor,
): Other[] {
  const { hands } = plan;
  const about = hands.indexOf(hand);
  const counted = [about, ...[...hands.keys()].filter((i) => i !== about && isSleptIn(hands[i]))];
  const key = ({ stand, wall }: Candidate) => `${stand.room} ${wallOf(plan, stand.room, { stand, wall })}`;
  const otherOf = (chosen: Candidate[], cost: number): Other => {
    const piece = counted.find((i) => key(chosen[i]) !== key(best[i])) ?? about;
    const differs = chosen[piece].stand.room === best[piece].stand.room ? 'wall' : 'room';
    return { piece: hands[piece].piece.id, differs, chosen, cost };
  };
  const solved = (part: Part) => {
    const wishes = new Map(
      [...part].map(([piece, { is, not }]) => [
        piece,
        {
          name: `${is ?? ''}!${not.join(',')}`,
          wanted: (candidate: Candidate) =>
            (is === null || key(candidate) === is) && !not.includes(key(candidate)),
        },
      ]),
    );
    const { choose, cost } = searchFor(wishes);
    return cost < Infinity ? [{ part, choose, cost }] : [];
  };
  const parted = (part: Part, taken: readonly Candidate[]) =>
    counted.flatMap((piece, k) => {
      const known = part.get(piece);
      if (known?.is) return [];
      const next = new Map(part);
      for (const before of counted.slice(0, k)) next.set(before, { is: key(taken[before]), not: [] });
      next.set(piece, { is: null, not: [...(known?.not ?? []), key(taken[piece])] });
      return solved(next);
    });

  const found: Other[] = [];
  let open = parted(new Map(), best);
  while (found.length < OTHERS && open.length > 0) {
    const next = open.reduce((least, one) => (one.cost < least.cost ? one : least));
    const chosen = next.choose()!;
    found.push(otherOf(chosen, next.cost));
    if (found.length < OTHERS) open = [...open.filter((one) => one !== next), ...parted(next.part, chosen)];
  }

  const firstOf = (differs: Other['differs']) =>
    found.find((other) => other.piece === hand.piece.id && other.differs === differs);
  const certain = [firstOf('room') ?? elsewhere, firstOf('wall') ?? atAnotherWall()].filter(
    (one) => one !== null,
  );
  const rest = found.filter((one) => !certain.includes(one)).slice(0, OTHERS - certain.length);
  // One that keeps fewer preferences is there where nothing else is left, and comes last though it may cost less.
  return [...certain, ...rest].sort((a, b) => brokenIn(a) - brokenIn(b) || a.cost - b.cost);

  function atAnotherWall(): Other | null {
    const { stand } = best[about];
    const name = `aside ${key(best[about])}`;
    const wanted = (candidate: Candidate) =>
      candidate.stand.room === stand.room && key(candidate) !== key(best[about]);
    const { choose, cost } = searchFor(new Map([[about, { name, wanted }]]));
    const chosen = choose();
    return chosen && otherOf(chosen, cost);
  }
}

const brokenIn = ({ chosen }: Other): number => chosen.reduce((sum, { breaks }) => sum + breaks.length, 0);

function wallOf(plan: Plan, room: string, { stand, wall }: Pick<Candidate, 'stand' | 'wall'>): number {
  if (wall !== AS_FOUND) return wall;
  const site = plan.site(room);
  return site.walls.findIndex((one) => one === backWall(stand, site)?.wall);
}
