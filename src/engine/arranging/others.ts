import { AS_FOUND, type Candidate } from './candidates';
import { backWall, type BrokenRule } from './rules';
import type { Hand, Plan } from './plan';
import type { Solved } from './solve';

/** The best arrangement with a piece in one room, or what keeps it out. */
export type InRoom = { room: string; chosen: Candidate[] } | { room: string; blocked: BrokenRule };

/** What else there is for one piece. */
export interface Others {
  rooms: InRoom[];
  alternatives: { differs: 'room' | 'wall'; chosen: Candidate[] }[];
}

/** The piece that matters most: of those slept in, or else of all, the one used for the most hours; null where none is. */
export function mostUsed(hands: readonly Hand[]): Hand | null {
  const hours = ({ piece }: Hand) => piece.uses.reduce((sum, use) => sum + use.hours, 0);
  const used = hands.filter((hand) => hours(hand) > 0);
  const slept = used.filter(({ piece }) => piece.kind === 'bed' || piece.kind === 'cot');
  const among = slept.length > 0 ? slept : used;
  return among.reduce<Hand | null>((most, hand) => (most && hours(most) >= hours(hand) ? most : hand), null);
}

/**
 * For one piece: the best in each of its rooms, the best in a room other than that of `best`, and the best at another wall
 * of the same room. `solveFor` solves the plan with the piece's places narrowed.
 */
export function othersFor(
  plan: Plan,
  { hand, rooms, best }: { hand: Hand; rooms: readonly string[]; best: readonly Candidate[] },
  solveFor: (wanted: (candidate: Candidate) => boolean) => Solved,
): Others {
  const own = best.find(({ stand }) => stand.piece === hand.piece)!;
  const solved = rooms.map((room) => ({ room, ...solveFor(({ stand }) => stand.room === room) }));
  const nextRoom = solved
    .filter(({ room, chosen }) => room !== own.stand.room && chosen)
    .reduce<(typeof solved)[number] | null>(
      (least, one) => (least && least.cost <= one.cost ? least : one),
      null,
    );
  const wall = wallOf(plan, own);
  const nextWall = solveFor(
    (candidate) => candidate.stand.room === own.stand.room && wallOf(plan, candidate) !== wall,
  );
  return {
    rooms: solved.map(({ room, chosen }): InRoom =>
      chosen
        ? { room, chosen }
        : { room, blocked: plan.keptOut(hand.piece.id, room) ?? { kind: 'crowded', with: null } },
    ),
    alternatives: [
      ...(nextRoom?.chosen ? [{ differs: 'room' as const, chosen: nextRoom.chosen }] : []),
      ...(nextWall.chosen ? [{ differs: 'wall' as const, chosen: nextWall.chosen }] : []),
    ],
  };
}

function wallOf(plan: Plan, { stand, wall }: Candidate): number {
  if (wall !== AS_FOUND) return wall;
  const site = plan.site(stand.room);
  return site.walls.findIndex((one) => one === backWall(stand, site)?.wall);
}
