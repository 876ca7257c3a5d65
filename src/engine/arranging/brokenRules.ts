import { fieldsOf } from '../dose/fieldAt';
import { groundOf, supports } from './ground';
import { hasSides, standOf, type Stand } from './stand';
import { PAIR_RULES, PIECE_RULES, type BrokenRule } from './rules';
import { roomAt, siteOf, type Site } from './site';
import { roomsFor } from './plan';
import { waysOf, type Ways } from './floor/ways';
import { zoneOf } from '../dose/zones';
import type { ArrangePiece, ArrangeRequest } from './request';
import type { Put } from './place';

/**
 * Every rule, hard or preferred, that a piece breaks where it is put, among `others` where they are put (pieces of the
 * request not named there stand as found, and no way is asked for that they take already). Empty: a place the planner might have proposed. Access strips may lie on either
 * side, of this piece and of the others: the way that breaks the fewest rules counts.
 */
export function brokenRules(request: ArrangeRequest, put: Put, others: readonly Put[] = []): BrokenRule[] {
  const piece = pieceOf(request, put.id);
  const here = roomAt(request, put.level, put.at);
  if (!here) return [{ kind: 'outside-room', with: null }];
  const may = roomsFor(request, piece, roomAt(request, piece.level, piece.at)).includes(here);
  const site = siteOf(request, here);
  const neighbours = request.pieces
    .filter(({ id }) => id !== put.id)
    .map((other) => ({ piece: other, put: others.find(({ id }) => id === other.id) }))
    .map((other) => ({ ...other, at: other.put ?? other.piece }))
    .filter(({ at }) => roomAt(request, at.level, at.at) === here)
    .map((other) => ({ ...other, ways: bothWays(other.piece, here.id, other.at, site) }));

  const always: BrokenRule[] = [
    ...(may ? [] : [{ kind: 'wrong-room' as const, with: here.id }]),
    ...(unsupported(request, piece, put, site) ? [{ kind: 'unsupported' as const, with: null }] : []),
  ];
  const own = ways(piece, here.id, put);
  const fewest = least(
    own.map((stand) => [
      ...alone(stand, site),
      ...neighbours.flatMap(({ ways }) => least(ways.map((other) => against(stand, other, site)))),
    ]),
  );
  // What stands before a door shuts it: said once.
  const shuts = fewest.some(({ kind }) => kind === 'before-door' || kind === 'outside-room');
  const unnamed = neighbours.flatMap(({ put: named, ways: [stand] }) => (named ? [] : [stand]));
  const named = neighbours.flatMap(({ put: named, ways }) => (named ? [ways] : []));
  return [...always, ...fewest, ...(shuts ? [] : cutsOff(waysOf(site, unnamed), own, named))];
}

function pieceOf({ pieces }: ArrangeRequest, id: string): ArrangePiece {
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
    return found === null ? [] : [{ kind, with: found || null }];
  });
}

/** The first rule broken between two pieces says enough: what overlaps takes access too. */
function against(stand: Stand, other: Stand, { rules }: Site): BrokenRule[] {
  const first = PAIR_RULES.find((rule) => rule.broken(stand, other, rules));
  return first ? [{ kind: first.kind, with: other.piece.id }] : [];
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

function unsupported(
  request: ArrangeRequest,
  piece: ArrangePiece,
  { at, angle }: Put,
  { room }: Site,
): boolean {
  if (piece.uses.length === 0) return false;
  const ground = groundOf(fieldsOf(request.fitted)(room.level, piece.height), room.outline, false);
  return piece.uses.some(
    ({ side }) => !supports(ground, zoneOf(piece.kind, { at, angle }, piece.size, side)),
  );
}
