import { AS_FOUND, choiceOf, type Candidate } from './candidates';
import { compatibility, type Compatible } from './search';
import { groundOf, type Ground } from './ground';
import { hasSides, standOf, type Stand } from './stand';
import { boxInside } from './box';
import { roomAt, siteOf, type Site } from './site';
import { suits, type ArrangePiece, type ArrangeRequest, type ArrangeRoom } from './request';
import { together, type BrokenRule } from './rules';
import type { FieldAt } from '../dose/fieldAt';

/** A piece to be placed, and its places in all rooms it may stand in, cheapest first. */
export interface Hand {
  piece: ArrangePiece;
  candidates: Candidate[];
}

/** Everything the search needs to know, worked out once. */
export interface Plan {
  hands: Hand[];
  /** What stands and stays: locked pieces, and those that fit nowhere. */
  fixed: Stand[];
  compatible: Compatible;
  /** Pieces that fit nowhere. */
  blocked: { id: string; rule: BrokenRule }[];
  /** What keeps a piece out of a room where it has no place. */
  keptOut(piece: string, room: string): BrokenRule | undefined;
  site(room: string): Site;
  ground(room: string, height: number): Ground;
}

/** Rooms a piece may be put in: those it is told, or those whose use suits it and the one it stands in. */
export function roomsFor(
  { rooms }: ArrangeRequest,
  piece: ArrangePiece,
  here: ArrangeRoom | null,
): ArrangeRoom[] {
  return rooms.filter(({ id, use }) =>
    piece.mayStandIn ? piece.mayStandIn.includes(id) : id === here?.id || suits(piece.kind, use),
  );
}

/** All places of all unlocked pieces. `progress` is told the share done, 0…1. */
export function planOf(request: ArrangeRequest, fieldAt: FieldAt, progress?: (share: number) => void): Plan {
  const sites = new Map(request.rooms.map((room) => [room.id, siteOf(request, room)]));
  const grounds = new Map<string, Ground>();
  const site = (room: string) => sites.get(room)!;
  const ground = (room: string, height: number) => {
    const key = `${room} ${height}`;
    const { level, outline } = site(room).room;
    const made = grounds.get(key) ?? groundOf(fieldAt(level, height), outline, request.cautious);
    grounds.set(key, made);
    return made;
  };
  const asFound = (piece: ArrangePiece) => standAsFound(request, piece, site);

  const fixed = request.pieces.filter(({ locked }) => locked).flatMap((piece) => asFound(piece) ?? []);
  const movable = request.pieces.filter(({ locked }) => !locked);
  const keptOut = new Map<string, BrokenRule>();
  let hands = movable.map((piece, i): Hand => {
    const here = roomAt(request, piece.level, piece.at);
    const candidates = roomsFor(request, piece, here).flatMap((room) => {
      const standsHere = here?.id === room.id;
      const choice = choiceOf(piece, site(room.id), ground(room.id, piece.height), {
        step: request.step,
        fixed,
        standsHere,
      });
      if (choice.candidates.length === 0) keptOut.set(`${piece.id} ${room.id}`, choice.keptOut);
      return choice.candidates;
    });
    progress?.((i + 1) / movable.length);
    return { piece, candidates: candidates.sort(byCost) };
  });

  // A piece that fits nowhere stays where it is, and may by that keep others out.
  const blocked: Plan['blocked'] = [];
  for (let stuck = hands.find(isEmpty); stuck; stuck = hands.find(isEmpty)) {
    const { piece } = stuck;
    const rules = [...keptOut].filter(([key]) => key.startsWith(`${piece.id} `)).map(([, rule]) => rule);
    blocked.push({ id: piece.id, rule: rules[0] ?? { kind: 'wrong-room', with: null } });
    hands = hands.filter((hand) => hand !== stuck);
    const stand = asFound(piece);
    if (!stand) continue;
    fixed.push(stand);
    hands = hands.map((hand) => withoutThoseAgainst(hand, stand, keptOut));
  }

  const counts = hands.map(({ candidates }) => candidates.length);
  const compatible = compatibility(counts, (p, i, q, j) =>
    together(hands[p].candidates[i].stand, hands[q].candidates[j].stand),
  );
  return {
    hands,
    fixed,
    compatible,
    blocked,
    keptOut: (piece, room) => keptOut.get(`${piece} ${room}`),
    site,
    ground,
  };
}

/** Cheapest first; of equals, the place it has now: nothing moves for nothing. */
const byCost = (a: Candidate, b: Candidate): number =>
  a.cost - b.cost || Number(b.wall === AS_FOUND) - Number(a.wall === AS_FOUND);

const isEmpty = ({ candidates }: Hand): boolean => candidates.length === 0;

function withoutThoseAgainst(hand: Hand, stand: Stand, keptOut: Map<string, BrokenRule>): Hand {
  const candidates = hand.candidates.filter((candidate) => together(candidate.stand, stand));
  for (const { stand: lost } of hand.candidates) {
    if (!candidates.some(({ stand: left }) => left.room === lost.room))
      keptOut.set(`${hand.piece.id} ${lost.room}`, { kind: 'overlap', with: stand.piece.id });
  }
  return { ...hand, candidates };
}

/**
 * A piece where it stands now; null outside all rooms. Nobody says on which side its strips lie: as they are named, unless
 * the room has space for them the other way round only.
 */
function standAsFound(
  request: ArrangeRequest,
  piece: ArrangePiece,
  site: (room: string) => Site,
): Stand | null {
  const room = roomAt(request, piece.level, piece.at);
  if (!room) return null;
  const pose = { at: piece.at, angle: piece.angle };
  const [named, turned] = [false, true].map((mirrored) => standOf(piece, room.id, pose, mirrored));
  const fits = ({ reach }: Stand) => boxInside(reach, site(room.id).room.outline);
  return hasSides(piece) && !fits(named) && fits(turned) ? turned : named;
}
