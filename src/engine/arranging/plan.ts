import { AS_FOUND, choiceOf, type Candidate } from './candidates';
import { boxInside } from './box';
import { groundOf, type Ground } from './ground';
import { hasSides, standOf, type Stand } from './stand';
import { roomAt, siteOf, type Site } from './site';
import { roomValues, type RoomValues } from './roomValues';
import { suits, type ArrangePiece, type ArrangeRequest, type ArrangeRoom } from './request';
import { together, type BrokenRule } from './rules';
import { waysOf, type Ways } from './floor/ways';
import type { FieldAt } from '../dose/fieldAt';

/** A piece to be placed, and its places in each room of the request, cheapest first. */
export interface Hand {
  piece: ArrangePiece;
  rooms: Candidate[][];
}

/** Everything the search needs to know, worked out once. */
export interface Plan {
  aim: ArrangeRequest['aim'];
  hands: Hand[];
  /** What stands and stays: locked pieces, and those that fit nowhere. */
  fixed: Stand[];
  values: RoomValues;
  /** Pieces that fit nowhere. */
  blocked: { id: string; rule: BrokenRule }[];
  /** What keeps a piece out of a room where it has no place. */
  keptOut(piece: string, room: string): BrokenRule | undefined;
  site(room: string): Site;
  ground: Grounds;
  ways(room: string): Ways;
}

/** The field over a room of a request, at a height over its floor. */
export type Grounds = (room: string, height: number) => Ground;

/** Grounds of a request, each made when it is first asked for. */
export function groundsOf(
  { rooms, cautious }: Pick<ArrangeRequest, 'rooms' | 'cautious'>,
  fieldAt: FieldAt,
): Grounds {
  const made = new Map<string, Ground>();
  return (room, height) => {
    const key = `${room} ${height}`;
    const known = made.get(key);
    if (known) return known;
    const { level, outline } = rooms.find(({ id }) => id === room)!;
    const ground = groundOf(fieldAt(level, height), outline, cautious);
    made.set(key, ground);
    return ground;
  };
}

/** Pieces placed together: with more, those used least stay where they are. The project's choice. */
const MOST_PIECES = 12;

/** Rooms a piece may be put in: those it is told, or those whose use suits it and the one it stands in. */
export function roomsFor(
  { rooms }: Pick<ArrangeRequest, 'rooms'>,
  piece: ArrangePiece,
  here: ArrangeRoom | null,
): ArrangeRoom[] {
  return rooms.filter(({ id, use }) =>
    piece.mayStandIn ? piece.mayStandIn.includes(id) : id === here?.id || suits(piece.kind, use),
  );
}

/** All places of all unlocked pieces. `progress` is told the share done, 0…1. */
export function planOf(request: ArrangeRequest, ground: Grounds, progress?: (share: number) => void): Plan {
  const { rooms, rules, step } = request;
  const site = keptBy((room) =>
    siteOf(
      request,
      rooms.find(({ id }) => id === room)!,
    ),
  );
  const asFound = (piece: ArrangePiece) => standAsFound(request, piece, site);

  const { movable, left } = sorted(request.pieces);
  const fixed = request.pieces
    .filter((piece) => piece.locked || left.includes(piece))
    .flatMap((piece) => asFound(piece) ?? []);
  const keptOut = new Map<string, BrokenRule>();
  let hands = movable.map((piece, i): Hand => {
    const here = roomAt(request, piece.level, piece.at);
    const allowed = roomsFor(request, piece, here);
    const places = rooms.map((room) => {
      if (!allowed.includes(room)) return [];
      const choice = choiceOf(piece, site(room.id), ground(room.id, piece.height), {
        step,
        fixed,
        standsHere: here?.id === room.id,
      });
      if (choice.candidates.length === 0) keptOut.set(`${piece.id} ${room.id}`, choice.keptOut);
      return choice.candidates.sort(byCost);
    });
    progress?.((i + 1) / movable.length);
    return { piece, rooms: places };
  });

  // A piece that fits nowhere stays where it is, and may by that keep others out.
  const blocked: Plan['blocked'] = left.map(({ id }) => ({ id, rule: { kind: 'not-tried', with: null } }));
  for (let stuck = hands.find(isEmpty); stuck; stuck = hands.find(isEmpty)) {
    const { piece } = stuck;
    const reasons = [...keptOut].filter(([key]) => key.startsWith(`${piece.id} `)).map(([, rule]) => rule);
    blocked.push({ id: piece.id, rule: reasons[0] ?? { kind: 'wrong-room', with: null } });
    hands = hands.filter((hand) => hand !== stuck);
    const stand = asFound(piece);
    if (!stand) continue;
    fixed.push(stand);
    hands = hands.map((hand) => withoutThoseAgainst(hand, stand, request, keptOut));
  }

  const ways = keptBy((room) =>
    waysOf(
      site(room),
      fixed.filter((stand) => stand.room === room),
    ),
  );
  return {
    aim: request.aim,
    hands,
    fixed,
    values: roomValues(
      hands.map((hand) => hand.rooms),
      rules,
      (room, stands) => ways(rooms[room].id).lost(stands.map((stand) => [stand])),
    ),
    blocked,
    keptOut: (piece, room) => keptOut.get(`${piece} ${room}`),
    site,
    ground,
    ways,
  };
}

export function keptBy<T>(make: (key: string) => T): (key: string) => T {
  const made = new Map<string, T>();
  return (key) => {
    const known = made.get(key);
    if (known !== undefined) return known;
    const fresh = make(key);
    made.set(key, fresh);
    return fresh;
  };
}

/** Which pieces are placed, and which are left although they could be moved. */
export function sorted(pieces: readonly ArrangePiece[]): { movable: ArrangePiece[]; left: ArrangePiece[] } {
  const free = pieces.filter(({ locked }) => !locked);
  const byUse = free.toSorted((a, b) => hoursOf(b) - hoursOf(a));
  const left = byUse.slice(MOST_PIECES);
  return { movable: free.filter((piece) => !left.includes(piece)), left };
}

/** Hours a day that a piece is used, over all who use it. */
export const hoursOf = ({ uses }: Pick<ArrangePiece, 'uses'>): number =>
  uses.reduce((sum, { hours }) => sum + hours, 0);

/** Cheapest first; of equals, the place it has now: nothing moves for nothing. */
export const byCost = (a: Candidate, b: Candidate): number =>
  a.cost - b.cost || Number(b.wall === AS_FOUND) - Number(a.wall === AS_FOUND);

const isEmpty = ({ rooms }: Hand): boolean => rooms.every((places) => places.length === 0);

function withoutThoseAgainst(
  hand: Hand,
  stand: Stand,
  { rooms, rules }: ArrangeRequest,
  keptOut: Map<string, BrokenRule>,
): Hand {
  const places = hand.rooms.map((own, room) => {
    const left = own.filter((candidate) => together(candidate.stand, stand, rules));
    if (own.length > 0 && left.length === 0)
      keptOut.set(`${hand.piece.id} ${rooms[room].id}`, { kind: 'overlap', with: stand.piece.id });
    return left;
  });
  return { ...hand, rooms: places };
}

/**
 * A piece where it stands now; null outside all rooms. Nobody says on which side its strips lie: as they are named, unless
 * the room has space for them the other way round only.
 */
export function standAsFound(
  request: Pick<ArrangeRequest, 'rooms'>,
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
