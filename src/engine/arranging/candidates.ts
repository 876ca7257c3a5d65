import { add, scale } from '../geometry/point';
import { hasSides, otherWay, standOf, type Stand, type WallSide } from './stand';
import { meanOver, supports, type Ground } from './ground';
import { PAIR_RULES, PIECE_RULES, type BrokenRule } from './rules';
import { zoneOf, zoneRing } from '../dose/zones';
import type { ArrangeKind, ArrangePiece } from './request';
import type { Pose } from '../geometry/pose';
import type { Site, Wall } from './site';

/** A place that keeps every hard rule. */
export interface Candidate {
  stand: Stand;
  /** Index of the site's wall it stands at; −1 for the place it has now. */
  wall: number;
  /** Daily dose there, µT·h, as it is planned: summed over those who use it. */
  cost: number;
  /** The same of each who uses it, in the order of its uses. */
  doses: readonly number[];
  /** Preferences it does not keep. */
  breaks: BrokenRule[];
}

/** The places of one piece in one room, or what keeps it out. */
export interface Choice {
  candidates: Candidate[];
  keptOut: BrokenRule;
}

const ANY_SIDE: readonly WallSide[] = ['head', 'left', 'right'];

/** Which of its sides a piece turns to the wall. */
const SIDES: Record<ArrangeKind, readonly WallSide[]> = {
  bed: ['head'],
  cot: ANY_SIDE,
  desk: ['head'],
  seat: ['head'],
  other: ['head'],
};

/** Degrees from facing up the page with the head to a wall, to facing it with that side. */
const TURN: Record<WallSide, number> = { head: 0, left: 90, right: -90 };

/**
 * Every place of a piece in a room: where it stands now, and each wall × side × offset × change of access sides, offsets
 * a step apart from one end of the wall and flush with the other. Those that break a hard rule are left out, as are those
 * that cannot be together with a stand in `fixed`.
 */
export function choiceOf(
  piece: ArrangePiece,
  site: Site,
  ground: Ground,
  { step, fixed, standsHere }: { step: number; fixed: readonly Stand[]; standsHere: boolean },
): Choice {
  const candidates: Candidate[] = [];
  let furthest = { order: -1, rule: NO_WALL };
  const consider = (pose: Pose, wall: number) => {
    // The same day whichever side its strips lie on.
    let day: Day | undefined;
    const named = standOf(piece, site.room.id, pose, false);
    for (const mirrored of hasSides(piece) ? [false, true] : [false]) {
      const stand = mirrored ? otherWay(named) : named;
      const verdict = judge(stand, site, fixed, () => (day ??= dayAt(stand, ground)));
      if (!verdict.broken) {
        candidates.push({ stand, wall, cost: verdict.cost, doses: verdict.doses, breaks: verdict.breaks });
      } else if (wall === AS_FOUND && piece.uses.length === 0) {
        // Nobody gains by moving it: it may stay however it stands.
        candidates.push({ stand, wall, cost: 0, doses: [], breaks: [] });
      } else {
        if (verdict.order > furthest.order) furthest = { order: verdict.order, rule: verdict.broken };
        if (verdict.order < STRIPS) return;
      }
    }
  };
  if (standsHere) consider({ at: piece.at, angle: piece.angle }, AS_FOUND);
  site.walls.forEach((wall, index) => {
    const sideways = piece.kind === 'desk' && site.rules.deskSideways;
    for (const side of sideways ? ANY_SIDE : SIDES[piece.kind]) {
      for (const offset of offsetsAlong(wall, breadth(piece, side), step)) {
        consider(poseAt(piece, wall, side, offset), index);
      }
    }
  });
  return { candidates, keptOut: furthest.rule };
}

export const AS_FOUND = -1;

const NO_WALL: BrokenRule = { kind: 'head-off-wall', with: null };

/** Rules before this one do not ask on which side the strips lie. */
const STRIPS = PIECE_RULES.findIndex(({ kind }) => kind === 'access');

type Verdict =
  | { broken: null; breaks: BrokenRule[]; cost: number; doses: readonly number[] }
  | { broken: BrokenRule; order: number };

/** Daily doses of those who use a piece somewhere, as planned: µT·h. */
interface Day {
  doses: readonly number[];
  /** Whether the map speaks for where they are. */
  supported: boolean;
}

/** The first hard rule that a stand breaks, with its place in the order; or the preferences it does not keep, and what it costs. */
export function judge(stand: Stand, site: Site, others: readonly Stand[], day: () => Day): Verdict {
  const breaks: BrokenRule[] = [];
  for (let order = 0; order < PIECE_RULES.length; order++) {
    const rule = PIECE_RULES[order];
    const found = rule.breach(stand, site);
    if (found === null) continue;
    const broken = { kind: rule.kind, with: found || null };
    if (!rule.preference) return { broken, order };
    breaks.push(broken);
  }
  const { doses, supported } = day();
  if (!supported) return { broken: { kind: 'unsupported', with: null }, order: PIECE_RULES.length };
  for (const [order, rule] of PAIR_RULES.entries()) {
    const other = others.find((o) => o.room === stand.room && rule.broken(stand, o, site.rules));
    if (other)
      return { broken: { kind: rule.kind, with: other.piece.id }, order: PIECE_RULES.length + 1 + order };
  }
  return { broken: null, breaks, cost: sumOf(doses), doses };
}

const dayAt = (stand: Stand, ground: Ground): Day => ({
  doses: dosesOf(stand, ground),
  supported: isSupported(stand, ground),
});

/** Daily dose of each who uses a piece where it stands, as planned: µT·h. */
export const dosesOf = ({ piece: { kind, size, uses }, pose }: Stand, ground: Ground): number[] =>
  uses.map(({ side, hours }) => hours * meanOver(ground, zoneRing(kind, pose, size, side)));

export const isSupported = ({ piece: { kind, size, uses }, pose }: Stand, ground: Ground): boolean =>
  ground.clear || uses.every(({ side }) => supports(ground, zoneOf(kind, pose, size, side)));

export const sumOf = (doses: readonly number[]): number => doses.reduce((sum, dose) => sum + dose, 0);

const breadth = ({ size }: ArrangePiece, side: WallSide): number => (side === 'head' ? size[0] : size[1]);

/** Middles of a stretch of some breadth along a wall, from one end to flush with the other. */
function offsetsAlong({ length }: Wall, broad: number, step: number): number[] {
  const first = broad / 2;
  const last = length - broad / 2;
  // A piece as broad as the wall is long fits, whatever the rounding.
  if (last < first - 1e-9) return [];
  const offsets: number[] = [];
  for (let i = 0; first + i * step < last - 1e-9; i++) offsets.push(first + i * step);
  offsets.push(Math.max(first, last));
  return offsets;
}

/** The pose of a piece with one side flush to a wall, its middle so many metres along it. */
function poseAt(piece: ArrangePiece, wall: Wall, side: WallSide, offset: number): Pose {
  const depth = (side === 'head' ? piece.size[1] : piece.size[0]) / 2;
  const [x, y] = wall.inward;
  const facing = (Math.atan2(-y, -x) * 180) / Math.PI - 90 + TURN[side];
  return {
    at: add(add(wall.a, scale(wall.along, offset)), scale(wall.inward, depth)),
    // Rounded so that what stands at an upright wall is turned by whole quarters.
    angle: (Math.round(facing * 1e9) / 1e9 + 720) % 360,
  };
}
