import { corners, distanceToRing } from './box';
import { PAIR_RULES, PIECE_RULES, type BrokenRule } from './rules';
import { hasSides, standOf, type Stand } from './stand';
import { keptBy, roomsFor } from './plan';
import { roomAt, siteOf, type Site } from './site';
import { ruleShapes, type RuleShapes } from './ruleShapes';
import { waysOf, type Ways } from './floor/ways';
import { withMetresLeft } from './metresLeft';
import type { ArrangePiece, ArrangeRequest, ArrangeRoom } from './request';
import type { Put } from './place';

/** What rules are asked about: a request without its map. */
export type RuleQuestion = Pick<ArrangeRequest, 'rooms' | 'openings' | 'fixtures' | 'pieces' | 'rules'>;

/** The rules of one request. What a room asks is worked out once, so that they can be asked at every move of a hand. */
export interface RuleBook {
  /**
   * Every rule, hard or preferred, that a piece breaks where it is put, among `others` where they are put (pieces of the
   * request not named there stand as found, and no way is asked for that they take already). Empty: a place the planner
   * might have proposed, if the map speaks for it. Access strips may lie on either side, of this piece and of the others: the
   * way that breaks the fewest rules counts.
   */
  broken(put: Put, others?: readonly Put[]): BrokenRule[];
  /** The same, and the rules as shapes on the plan, which are null outside all rooms. */
  look(put: Put): { broken: BrokenRule[]; shapes: RuleShapes | null };
}

/** A piece among those of its room. */
interface Standing {
  here: ArrangeRoom;
  site: Site;
  /** The way of standing that breaks the fewest rules, and those. */
  stand: Stand;
  fewest: BrokenRule[];
  own: Stand[];
  round: Round;
}

/** The other pieces of a room. */
interface Round {
  neighbours: { named: boolean; ways: Stand[] }[];
  /** With all that stand as found in it. */
  ways: Ways;
}

/** Makes the book of a request. */
export function ruleBook(request: RuleQuestion): RuleBook {
  const site = keptBy((room) =>
    siteOf(
      request,
      request.rooms.find(({ id }) => id === room)!,
    ),
  );

  const roundOf = (id: string, here: ArrangeRoom, others: readonly Put[]): Round => {
    const neighbours = request.pieces
      .filter((other) => other.id !== id)
      .map((other) => ({ piece: other, put: others.find((one) => one.id === other.id) }))
      .map((other) => ({ ...other, at: other.put ?? other.piece }))
      .filter(({ at }) => roomAt(request, at.level, at.at) === here)
      .map(({ piece, put, at }) => ({
        named: put !== undefined,
        ways: bothWays(piece, here.id, at, site(here.id)),
      }));
    const asFound = neighbours.flatMap(({ named, ways: [stand] }) => (named ? [] : [stand]));
    return { neighbours, ways: waysOf(site(here.id), asFound) };
  };
  // While a hand moves one piece, the others of its room stay.
  const rounds = new Map<string, { among: string; round: Round }>();
  const roundIn = (id: string, here: ArrangeRoom, others: readonly Put[]): Round => {
    const among = JSON.stringify(
      others.map((put) => put.id !== id && [put.id, put.level, put.at, put.angle]),
    );
    const known = rounds.get(`${id} ${here.id}`);
    if (known?.among === among) return known.round;
    const round = roundOf(id, here, others);
    rounds.set(`${id} ${here.id}`, { among, round });
    return round;
  };

  const standing = (put: Put, others: readonly Put[]): Standing | null => {
    const here = roomAt(request, put.level, put.at);
    if (!here) return null;
    const piece = pieceOf(request, put.id);
    const round = roundIn(put.id, here, others);
    const own = ways(piece, here.id, put);
    const broken = own.map((stand) => [
      ...alone(stand, site(here.id)),
      ...round.neighbours.flatMap(({ ways }) =>
        least(ways.map((other) => against(stand, other, site(here.id)))),
      ),
    ]);
    const fewest = least(broken);
    return { here, site: site(here.id), stand: own[broken.indexOf(fewest)], fewest, own, round };
  };

  const brokenBy = ({ here, fewest, own, round }: Standing, put: Put): BrokenRule[] => {
    const piece = pieceOf(request, put.id);
    const may = roomsFor(request, piece, roomAt(request, piece.level, piece.at)).includes(here);
    // What stands before a door shuts it: said once.
    const shuts = fewest.some(({ kind }) => kind === 'before-door' || kind === 'outside-room');
    const named = round.neighbours.flatMap(({ named: isNamed, ways }) => (isNamed ? [ways] : []));
    return [
      ...(may ? [] : [{ kind: 'wrong-room' as const, with: here.id }]),
      ...fewest,
      ...(shuts ? [] : cutsOff(round.ways, own, named)),
    ];
  };

  return {
    broken(put, others = []) {
      const found = standing(put, others);
      return found ? brokenBy(found, put) : OUTSIDE;
    },
    look(put) {
      const found = standing(put, []);
      if (!found) return { broken: OUTSIDE, shapes: null };
      const broken = brokenBy(found, put);
      const { stand, round } = found;
      const neighbours = round.neighbours.map(({ ways: [first] }) => first);
      const routes = round.ways.routes(stand);
      return { broken, shapes: ruleShapes({ stand, site: found.site, neighbours, broken, routes }) };
    },
  };
}

const OUTSIDE: BrokenRule[] = [{ kind: 'outside-room', with: null }];

function pieceOf({ pieces }: RuleQuestion, id: string): ArrangePiece {
  const piece = pieces.find((one) => one.id === id);
  if (!piece) throw new Error(`The request has no piece ${id}.`);
  return piece;
}

const ways = (piece: ArrangePiece, room: string, { at, angle }: Pick<Put, 'at' | 'angle'>): Stand[] =>
  (hasSides(piece) ? [false, true] : [false]).map((mirrored) =>
    standOf(piece, room, { at, angle }, mirrored),
  );

/** The ways another piece may be meant to stand: those in which it keeps its own rules best. */
function bothWays(piece: ArrangePiece, room: string, put: Pick<Put, 'at' | 'angle'>, site: Site): Stand[] {
  const stands = ways(piece, room, put);
  const fewest = Math.min(...stands.map((stand) => alone(stand, site).length));
  return stands.filter((stand) => alone(stand, site).length === fewest);
}

function alone(stand: Stand, site: Site): BrokenRule[] {
  return PIECE_RULES.flatMap(({ kind, breach }) => {
    const found = breach(stand, site);
    return found === null ? [] : [withMetresLeft(stand, site, { kind, with: found || null })];
  });
}

/** The first rule broken between two pieces says enough: what overlaps takes access too. */
function against(stand: Stand, other: Stand, { rules }: Site): BrokenRule[] {
  const first = PAIR_RULES.find((rule) => rule.broken(stand, other, rules));
  if (!first) return [];
  const left =
    first.kind === 'cot-near-piece' ? { metres: distanceToRing(stand.foot, corners(other.foot)) } : {};
  return [{ kind: first.kind, with: other.piece.id, ...left }];
}

/** What is no longer come to because of a piece: it is, with the piece alone or with the others and not without it. */
function cutsOff(room: Ways, own: readonly Stand[], others: readonly (readonly Stand[])[]): BrokenRule[] {
  const alone = room.lost([own]);
  if (alone) return [alone];
  const all = room.lost([...others, own]);
  return all && room.lost(others) === null ? [all] : [];
}

const least = (lists: BrokenRule[][]): BrokenRule[] =>
  lists.reduce((fewest, list) => (list.length < fewest.length ? list : fewest));
