import { answerOf, doseAt, levelOf, type Answer } from './answer';
import { fieldsOf, type FieldAt } from '../dose/fieldAt';
import { mostUsed, othersFor, type InRoom } from './others';
import { planOf, roomsFor, type Hand } from './plan';
import { roomAt } from './site';
import { solve } from './solve';
import type { ArrangeRequest } from './request';
import type { BrokenRule } from './rules';
import type { Candidate } from './candidates';

export type { Answer, PlacedPiece } from './answer';
export type { Decision } from './odds';

/** An answer that is different for the piece most slept in: it stands in another room, or at another wall. */
export interface Alternative extends Answer {
  differs: 'room' | 'wall';
}

/** The least dose the piece most slept in can have in a room (µT·h a day), or the rule that keeps it out. */
type RoomOffer =
  { id: string; dose: number; low: number; high: number } | { id: string; blocked: BrokenRule };

export interface Proposal extends Answer {
  /** No other choice among the places tried has a lower planned dose. */
  proven: boolean;
  /** The piece that the alternatives and rooms speak of; null where none is unlocked and used. */
  about: string | null;
  /** Best first. */
  alternatives: Alternative[];
  /** Lowest first, then those that are closed to it. */
  rooms: RoomOffer[];
  /** Pieces that fit nowhere and were left where they stand. */
  blocked: { id: string; rule: BrokenRule }[];
}

/** Shares of the whole work, for progress: places and their doses; the best; the rest is rooms and alternatives. */
const PLACES = 0.5;
const BEST = 0.6;

/**
 * Where the unlocked pieces stand so that the home's daily dose, as the mean over its people, is least within the rules;
 * what that is worth and how surely; what else there is. The same request gives the same answer. `progress` is told the
 * share done, 0…1; once `cancelled` says so, the best met so far is given, unproven.
 */
export function arrange(
  request: ArrangeRequest,
  progress?: (share: number) => void,
  cancelled?: () => boolean,
): Proposal {
  const fieldAt = fieldsOf(request.fitted);
  const plan = planOf(request, fieldAt, (share) => progress?.(PLACES * share));
  const solveWhere = (wanted?: (hand: Hand, candidate: Candidate) => boolean) =>
    solve(plan, request.step, { budget: request.budget, cancelled }, wanted);

  const best = solveWhere();
  const crowded = leastUsed(plan.hands);
  if (!best.chosen && best.proven && crowded) {
    const rest = arrange(withLocked(request, crowded.piece.id), progress, cancelled);
    return {
      ...rest,
      blocked: [...rest.blocked, { id: crowded.piece.id, rule: { kind: 'crowded', with: null } }],
    };
  }
  progress?.(BEST);

  const answer = (chosen: readonly Candidate[]) => answerOf(request, fieldAt, chosen);
  const hand = mostUsed(plan.hands);
  const others =
    hand && best.chosen
      ? othersFor(plan, { hand, rooms: roomsOf(request, hand), best: best.chosen }, (wanted) =>
          solveWhere((own, candidate) => own !== hand || wanted(candidate)),
        )
      : { rooms: [], alternatives: [] };
  const offers = others.rooms.map((offer) => offerOf(request, fieldAt, hand, offer));
  const open = offers.filter((offer) => 'dose' in offer).sort((a, b) => a.dose - b.dose);
  progress?.(1);
  return {
    ...answer(best.chosen ?? []),
    proven: best.proven,
    about: hand?.piece.id ?? null,
    alternatives: others.alternatives
      .map(({ differs, chosen }): Alternative => ({ differs, ...answer(chosen) }))
      .sort((a, b) => a.after - b.after),
    rooms: [...open, ...offers.filter((offer) => 'blocked' in offer)],
    blocked: plan.blocked,
  };
}

const roomsOf = (request: ArrangeRequest, { piece }: Hand): string[] =>
  roomsFor(request, piece, roomAt(request, piece.level, piece.at)).map(({ id }) => id);

function offerOf(request: ArrangeRequest, fieldAt: FieldAt, hand: Hand | null, offer: InRoom): RoomOffer {
  if ('blocked' in offer) return { id: offer.room, blocked: offer.blocked };
  const { stand } = offer.chosen.find((candidate) => candidate.stand.piece === hand?.piece)!;
  const { dose, low, high } = doseAt(fieldAt, stand.piece, {
    level: levelOf(request, stand.room),
    ...stand.pose,
  });
  return { id: offer.room, dose, low, high };
}

/** Where not all pieces fit together, the one that matters least stays where it is. */
function leastUsed(hands: readonly Hand[]): Hand | null {
  const hours = ({ piece }: Hand) => piece.uses.reduce((sum, use) => sum + use.hours, 0);
  return hands.reduce<Hand | null>(
    (least, hand) => (least && hours(least) < hours(hand) ? least : hand),
    null,
  );
}

const withLocked = (request: ArrangeRequest, id: string): ArrangeRequest => ({
  ...request,
  pieces: request.pieces.map((piece) => (piece.id === id ? { ...piece, locked: true } : piece)),
});
