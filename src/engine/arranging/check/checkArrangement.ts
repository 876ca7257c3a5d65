import { apart, liesWithin, ringAt, shareFloor, toArea, winds } from './shapes';
import { before, roomToCheck, type CheckedRoom } from './room';
import { walkersIn, type Places, type Walkers } from './walkers';
import type { ArrangePiece, ArrangeRequest, ArrangeRoom } from '../request';
import type { Point, Ring } from '../../geometry/point';
import type { Put } from '../place';
import type { RuleSettings } from '../ruleSettings';

/** A hard rule that an arrangement breaks, by the piece that breaks it. */
export interface Fault {
  piece: string;
  rule: 'outside' | 'access' | 'fixture' | 'wall' | 'door' | 'heat' | 'window' | 'piece' | 'way' | 'escape';
}

const WITHIN = 0.006;
const AT_WALL = 0.105;
const COT = { heat: 0.6, window: 0.6, piece: 0.3 };

/** One way a piece may be meant to stand, its strips on either side: with its floor as against the room, and as against other pieces. */
interface Way {
  inRoom: Ring;
  amongPieces: Ring;
  strips: Ring[];
}

/** A piece that was put somewhere, with everything a look at it needs. */
interface Seen {
  piece: ArrangePiece;
  put: Put;
  foot: Ring;
  /** The same as against other pieces: two of them share what is forgiven. */
  body: Ring;
  ways: Way[];
}

/**
 * Looks over a whole arrangement once more and with other means than it was found by: areas are clipped and measured
 * instead of tested for a separating axis, ways are walked place by place. It forgives a millimetre more than the planner
 * allows itself. Only the pieces of `places` are judged; all others stand as found, as do those named in `left`.
 */
export const checkArrangement = (
  request: ArrangeRequest,
  places: readonly Put[],
  left: readonly string[] = [],
): Fault[] => checkerOf(request)(places, left);

/** The same for many arrangements of one request: who walks where in a room, and what stands in it so, is looked at once. */
export function checkerOf(request: ArrangeRequest): Checker {
  const rooms = keptBy((room: ArrangeRoom, still: readonly Seen[]) => {
    const checked = roomToCheck(request, room);
    const standing = still.map(({ foot, ways: [{ strips }] }) => ({ foot, sides: strips }));
    return { checked, walkers: walkersIn(checked, request.rules.path, standing) };
  });
  const faults = keptBy((room: ArrangeRoom, still: readonly Seen[], judged: readonly Seen[]) =>
    faultsIn(rooms(room, still), request, judged, still),
  );
  return (places, left = []) => {
    const seen = request.pieces.map((piece) => ({
      judged: places.some(({ id }) => id === piece.id) && !left.includes(piece.id),
      one: seenOf(piece, places.find(({ id }) => id === piece.id) ?? piece),
    }));
    const inRooms = request.rooms.flatMap((room) => {
      const here = seen.filter(
        ({ one: { put } }) => put.level === room.level && roomOf(request, put) === room,
      );
      const still = here.filter(({ judged }) => !judged).map(({ one }) => one);
      const judged = here.filter((each) => each.judged).map(({ one }) => one);
      return judged.length > 0 ? faults(room, still, judged) : [];
    });
    const lost = places.filter((put) => !roomOf(request, put));
    return [...inRooms, ...lost.map(({ id }): Fault => ({ piece: id, rule: 'outside' }))];
  };
}

export type Checker = (places: readonly Put[], left?: readonly string[]) => Fault[];

/** Worked out once for the same room with the same pieces at the same places. */
function keptBy<Lists extends (readonly Seen[])[], T>(
  make: (room: ArrangeRoom, ...lists: Lists) => T,
): (room: ArrangeRoom, ...lists: Lists) => T {
  const known = new Map<string, T>();
  return (room, ...lists) => {
    const places = lists.map((list) => list.map(({ put }) => [put.id, put.at, put.angle]));
    const key = JSON.stringify([room.id, places]);
    const made = known.get(key) ?? make(room, ...lists);
    known.set(key, made);
    return made;
  };
}

function roomOf({ rooms }: ArrangeRequest, { level, at }: Pick<Put, 'level' | 'at'>): ArrangeRoom | null {
  const inside = rooms.filter((room) => room.level === level && winds(room.outline, at));
  return inside.find(({ use }) => use !== 'grounds') ?? inside[0] ?? null;
}

function seenOf(piece: ArrangePiece, put: Put): Seen {
  const [w, l] = [piece.size[0] / 2, piece.size[1] / 2];
  const ring = (...extent: number[]) => ringAt(put, extent);
  const foot = (less: number) => ring(-w + less, w - less, -l + less, l - less);
  const reach = (left: number, right: number, less: number) =>
    ring(-w - right + less, w + left - less, -l - piece.access.foot + less, l - less);
  const way = (left: number, right: number): Way => ({
    inRoom: reach(left, right, WITHIN),
    amongPieces: reach(left, right, WITHIN / 2),
    strips: [
      ...(left > 0 ? [ring(w, w + left, -l, l)] : []),
      ...(right > 0 ? [ring(-w - right, -w, -l, l)] : []),
      ...(piece.access.foot > 0 ? [ring(-w, w, -l - piece.access.foot, -l)] : []),
    ],
  });
  const { left, right } = piece.access;
  return {
    piece,
    put,
    foot: foot(WITHIN),
    body: foot(WITHIN / 2),
    ways: left === right ? [way(left, right)] : [way(left, right), way(right, left)],
  };
}

function faultsIn(
  { checked, walkers }: { checked: CheckedRoom; walkers: Walkers },
  { rules }: ArrangeRequest,
  judged: readonly Seen[],
  still: readonly Seen[],
): Fault[] {
  const found = walkers.comeTo(judged.map(({ foot }) => foot));
  const faults = judged.flatMap((one) =>
    aloneFaults(one, checked, rules).map((rule): Fault => ({ piece: one.piece.id, rule })),
  );
  if (!found) return [...faults, { piece: judged[0].piece.id, rule: 'way' }];
  if (!walkers.escapes(found)) faults.push({ piece: judged[0].piece.id, rule: 'escape' });
  const open = judged.map((one) => ({ ...one, ways: one.ways.filter((way) => fits(way, checked)) }));
  for (const { piece, ways } of open) if (ways.length === 0) faults.push({ piece: piece.id, rule: 'access' });
  const reached = open.map((one) => ({
    ...one,
    ways: one.ways.filter((way) => isReached(way, walkers, found)),
  }));
  reached.forEach(({ piece, ways }, i) => {
    if (ways.length === 0 && open[i].ways.length > 0) faults.push({ piece: piece.id, rule: 'way' });
  });
  const clashing = firstClash(reached, still, rules.oneDouble);
  return clashing ? [...faults, { piece: clashing, rule: 'piece' }] : faults;
}

const fits = ({ inRoom: reach }: Way, { room, fixtures }: CheckedRoom): boolean =>
  liesWithin(reach, room.outline) && !fixtures.some(({ fixture }) => shareFloor(reach, fixture.outline));

const isReached = ({ strips }: Way, walkers: Walkers, found: Places): boolean =>
  strips.every((strip) => walkers.touches(strip, found));

function aloneFaults(
  { piece, put, foot }: Seen,
  { room, holes, fixtures }: CheckedRoom,
  rules: RuleSettings,
): Fault['rule'][] {
  const faults: Fault['rule'][] = [];
  const { kind } = piece;
  if (!liesWithin(foot, room.outline)) faults.push('outside');
  if (fixtures.some(({ fixture }) => shareFloor(foot, fixture.outline))) faults.push('fixture');
  const [w, l] = [piece.size[0] / 2, piece.size[1] / 2];
  const atWall = (...line: number[]) => {
    const [p, , q] = ringAt(put, line);
    return room.outline.some((a, i) => {
      const wall: Ring = [a, room.outline[(i + 1) % room.outline.length]];
      return toArea(p, wall) <= AT_WALL && toArea(q, wall) <= AT_WALL;
    });
  };
  const aside = kind === 'desk' && rules.deskSideways;
  const backed = atWall(-w, w, l, l) || (aside && (atWall(w, w, -l, l) || atWall(-w, -w, -l, l)));
  if ((kind === 'bed' || kind === 'desk') && !backed) faults.push('wall');
  const head: Ring = ringAt(put, [-w + WITHIN, w - WITHIN, l - 0.02, l + AT_WALL]);
  for (const hole of holes) {
    if (hole.kind === 'window') {
      if (kind === 'cot' && apart([hole.a, hole.b], foot) < COT.window - WITHIN) faults.push('window');
      continue;
    }
    const thin = before(hole, 0.02);
    if (kind === 'bed' && shareFloor(head, thin)) faults.push('door');
    if (shareFloor(foot, before(hole, rules.landing))) faults.push('door');
    if (hole.leaf && inSweep(foot, hole.leaf, hole.inward)) faults.push('door');
  }
  const radiators = fixtures.filter(({ fixture }) => fixture.kind === 'radiator');
  if (kind === 'cot' && radiators.some(({ fixture }) => apart(foot, fixture.outline) < COT.heat - WITHIN))
    faults.push('heat');
  return faults;
}

/** Whether an area meets the quarter that a leaf sweeps, as a fan of two hundred corners. */
function inSweep(foot: Ring, leaf: { hinge: Point; shut: Point; radius: number }, open: Point): boolean {
  const { hinge, shut, radius } = leaf;
  const fan = Array.from({ length: 200 }, (_, k): Point => {
    const turn = (k / 199) * (Math.PI / 2);
    const r = radius - WITHIN;
    return [
      hinge[0] + r * (shut[0] * Math.cos(turn) + open[0] * Math.sin(turn)),
      hinge[1] + r * (shut[1] * Math.cos(turn) + open[1] * Math.sin(turn)),
    ];
  });
  return shareFloor(foot, [hinge, ...fan]);
}

const sleepsTwo = ({ piece }: Seen): boolean =>
  piece.kind === 'bed' && new Set(piece.uses.map(({ who }) => who)).size > 1;

/** The first piece for which no choice of sides leaves all pieces their floor; null where there is one for all. */
function firstClash(judged: readonly Seen[], still: readonly Seen[], oneDouble: boolean): string | null {
  let furthest = 0;
  const go = (k: number, chosen: readonly Way[]): boolean => {
    furthest = Math.max(furthest, k);
    if (k === judged.length) return true;
    return judged[k].ways.some((way) => {
      const free = judged
        .slice(0, k)
        .every((other, i) => isFree(judged[k], way, other, chosen[i], oneDouble));
      const clear = still.every((other) =>
        other.ways.some((theirs) => isFree(judged[k], way, other, theirs, oneDouble)),
      );
      return free && clear && go(k + 1, [...chosen, way]);
    });
  };
  return go(0, []) ? null : (judged[furthest]?.piece.id ?? null);
}

function isFree(a: Seen, wayA: Way, b: Seen, wayB: Way, oneDouble: boolean): boolean {
  if (oneDouble && sleepsTwo(a) && sleepsTwo(b)) return false;
  if (shareFloor(a.body, wayB.amongPieces) || shareFloor(wayA.amongPieces, b.body)) return false;
  const withCot = a.piece.kind === 'cot' || b.piece.kind === 'cot';
  return !withCot || apart(a.foot, b.foot) >= COT.piece - WITHIN;
}
