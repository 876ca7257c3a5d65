import { answerOf, doseAt, levelOf, type Answer } from './answer';
import { checkerOf } from './check/checkArrangement';
import { fieldsOf } from '../dose/fieldAt';
import { groundsOf, hoursOf, planOf, roomsFor, type Grounds, type Hand } from './plan';
import { given, relaxed, type Relaxation } from './relax';
import { mapOver, type MapOver } from './mapOver';
import { peopleOf } from '../dose/pieceDose';
import { isAnother } from './isAnother';
import { inEachRoom, mostUsed, otherAnswers, type InRoom, type Other } from './others';
import { roomAt } from './site';
import { search, solve, type Wishes } from './solve';
import type { ZoneMeans } from '../dose/zoneMeans';
import type { ArrangeRequest } from './request';
import type { BrokenRule } from './rules';
import type { Candidate } from './candidates';

export type { Answer, PlacedPiece } from './answer';
export type { Decision } from './decide';

/** An answer in which a piece that is slept in stands in another room, or at another wall, than in the best. */
export interface Alternative extends Answer {
  /** The piece that differs. */
  piece: string;
  differs: 'room' | 'wall';
}

/** The least dose the piece most slept in can have in a room (µT·h a day), or the rule that keeps it out. */
type RoomOffer =
  { id: string; dose: number; low: number; high: number } | { id: string; blocked: BrokenRule };

export interface Proposal extends Answer {
  /** No other choice among the places tried has a lower planned dose. */
  proven: boolean;
  /** Share of the planned dose by which one at most could be lower; 0 where proven. */
  gap: number;
  /** The piece that the alternatives and rooms speak of; null where none is unlocked and used. */
  about: string | null;
  /** Best first; those that keep fewer preferences last. */
  alternatives: Alternative[];
  /** Lowest first, then those that are closed to it. */
  rooms: RoomOffer[];
  /** Pieces that fit nowhere and were left where they stand. */
  blocked: { id: string; rule: BrokenRule }[];
  /** Where pieces fit nowhere: the least that must be given up for all to fit, and what comes of it; null where nothing helps. */
  relaxed: { changes: Relaxation[]; answer: Answer } | null;
}

/** Shares of the whole work, for progress: places and their doses; the best; the rest is rooms and alternatives. */
const PLACES = 0.5;
const BEST = 0.6;

/** Nodes spent on what might be given up: well under a second. */
const RELAX_BUDGET = 100_000;

/** Told the share of the work done, 0…1, and the least planned dose met so far (µT·h a day, mean over people or of the worst off). */
export type Progress = (share: number, least?: number) => void;

/**
 * Where the unlocked pieces stand so that the home's daily dose, as the mean over its people or of the worst off, is least within the rules;
 * what that is worth and how surely; what else there is. The same request gives the same answer. Once `cancelled` says so,
 * the best met so far is given, unproven, with the share by which another might be lower.
 */
export function arrange(request: ArrangeRequest, progress?: Progress, cancelled?: () => boolean): Proposal {
  const fieldAt = fieldsOf(request.fitted);
  const maps = { ground: groundsOf(request, fieldAt), map: mapOver(request, fieldAt, request.fitted) };
  const proposal = arrangeAll(request, maps, progress, cancelled);
  const helps = proposal.blocked.some(({ rule }) => rule.kind !== 'not-tried');
  const relaxed = helps ? withLess(request, maps, cancelled) : null;
  progress?.(1);
  return { ...proposal, relaxed };
}

/** The map of a request: over its rooms, and what it says of zones. */
interface Maps {
  ground: Grounds;
  map: MapOver;
}

function arrangeAll(
  request: ArrangeRequest,
  maps: Maps,
  progress?: Progress,
  cancelled?: () => boolean,
): Omit<Proposal, 'relaxed'> {
  const plan = planOf(request, maps.ground, (share) => progress?.(PLACES * share));
  const limits = { budget: request.budget, cancelled };
  const searchFor = (wishes: Wishes) => search(plan, request.step, limits, wishes);

  const people = peopleOf(request.pieces.flatMap(({ uses }) => uses));
  const met = (cost: number) =>
    progress?.(PLACES, request.aim === 'worst-off' ? cost : cost / Math.max(1, people));
  const best = solve(plan, request.step, limits, undefined, met);
  const crowded = leastUsed(plan.hands);
  if (!best.chosen && best.proven && crowded) {
    const rest = arrangeAll(withLocked(request, crowded.piece.id), maps, progress, cancelled);
    return {
      ...rest,
      blocked: [...rest.blocked, { id: crowded.piece.id, rule: { kind: 'crowded', with: null } }],
    };
  }
  progress?.(BEST);

  const check = checkerOf(request);
  const answer = (chosen: readonly Candidate[]) => answerOf(request, maps.map, chosen, check);
  const hand = mostUsed(plan.hands);
  const rooms =
    hand && best.chosen
      ? inEachRoom(plan, { hand, rooms: roomsOf(request, hand), best: best.chosen }, searchFor)
      : [];
  const others =
    hand && best.chosen
      ? otherAnswers(
          plan,
          { hand, best: best.chosen, elsewhere: elsewhere(hand, rooms, best.chosen) },
          searchFor,
        )
      : [];
  const offers = rooms.map((offer) => offerOf(request, maps.map.means, hand, offer));
  const open = offers.filter((offer) => 'dose' in offer).sort((a, b) => a.dose - b.dose);
  const first = answer(best.chosen ?? []);
  return {
    ...first,
    proven: best.proven,
    gap: best.proven ? 0 : best.chosen ? 1 - best.bound / best.cost : 1,
    about: hand?.piece.id ?? null,
    alternatives: others
      .map(({ piece, differs, chosen }): Alternative => ({ piece, differs, ...answer(chosen) }))
      .filter((other) => isAnother(first, other))
      .sort((a, b) => brokenIn(a) - brokenIn(b) || a.after - b.after),
    rooms: [...open, ...offers.filter((offer) => 'blocked' in offer)],
    blocked: plan.blocked,
  };
}

/** All pieces placed with the least given up; null where even that does not help. */
function withLess(
  request: ArrangeRequest,
  { ground, map }: Maps,
  cancelled?: () => boolean,
): Proposal['relaxed'] {
  const limits = { budget: RELAX_BUDGET, cancelled };
  const less = relaxed(request, ground, limits);
  if (!less) return null;
  const { chosen } = solve(planOf(less, ground), request.step, limits);
  if (!chosen) return null;
  const answer = answerOf(less, map, chosen);
  return { changes: given(request, less, answer.pieces), answer };
}

/** Preferences that an answer does not keep. */
const brokenIn = ({ pieces }: Answer): number => pieces.reduce((sum, { breaks }) => sum + breaks.length, 0);

const roomsOf = (request: ArrangeRequest, { piece }: Hand): string[] =>
  roomsFor(request, piece, roomAt(request, piece.level, piece.at)).map(({ id }) => id);

/** The best answer that has the piece in another room. */
function elsewhere(
  { piece }: Hand,
  rooms: readonly (InRoom & { cost: number })[],
  best: readonly Candidate[],
): Other | null {
  const own = best.find(({ stand }) => stand.piece === piece)!.stand.room;
  return rooms.reduce<Other | null>((least, offer) => {
    if (!('chosen' in offer) || offer.room === own || (least && least.cost <= offer.cost)) return least;
    return { piece: piece.id, differs: 'room', chosen: offer.chosen, cost: offer.cost };
  }, null);
}

function offerOf(request: ArrangeRequest, means: ZoneMeans, hand: Hand | null, offer: InRoom): RoomOffer {
  if ('blocked' in offer) return { id: offer.room, blocked: offer.blocked };
  const { stand } = offer.chosen.find((candidate) => candidate.stand.piece === hand?.piece)!;
  const { dose, low, high } = doseAt(means, stand.piece, {
    level: levelOf(request, stand.room),
    ...stand.pose,
  });
  return { id: offer.room, dose, low, high };
}

/** Where not all pieces fit together, the one that matters least stays where it is. */
function leastUsed(hands: readonly Hand[]): Hand | null {
  return hands.reduce<Hand | null>(
    (least, hand) => (least && hoursOf(least.piece) < hoursOf(hand.piece) ? least : hand),
    null,
  );
}

const withLocked = (request: ArrangeRequest, id: string): ArrangeRequest => ({
  ...request,
  pieces: request.pieces.map((piece) => (piece.id === id ? { ...piece, locked: true } : piece)),
});
