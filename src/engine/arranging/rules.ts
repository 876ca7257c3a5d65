import {
  boxesOverlap,
  boxInside,
  boxMeetsLeaf,
  boxMeetsRing,
  distanceToRing,
  nearerThan,
  TOLERANCE,
} from './box';
import { cross, dot, sub, type Point } from '../geometry/point';
import { toPlan } from '../geometry/pose';
import { COT_KEEPS, type RuleSettings } from './ruleSettings';
import type { Site, Stretch, Wall } from './site';
import type { Stand, WallSide } from './stand';

/** The rules of a livable room, in the order they are looked at. */
export type RuleKind =
  | 'wrong-room'
  | 'outside-room'
  | 'on-fixture'
  | 'head-off-wall'
  | 'head-across-door'
  | 'back-off-wall'
  | 'before-door'
  | 'in-door-swing'
  | 'access'
  | 'cot-near-heat'
  | 'cot-near-window'
  | 'unsupported'
  | 'overlap'
  | 'access-taken'
  | 'cot-near-piece'
  | 'two-doubles'
  | 'no-way'
  | 'no-escape'
  | 'head-under-window'
  | 'near-radiator'
  | 'wardrobe-front'
  | 'crowded'
  | 'not-tried';

/** A rule that a place breaks, and what it breaks it against (an opening, fixture, piece or room), where there is one. */
export interface BrokenRule {
  kind: RuleKind;
  with: string | null;
  /** Metres left between them, where the rule asks for more and somebody looked. */
  metres?: number;
}

/** Null where the rule is kept; else what it is broken against, or an empty string. */
type Breach = string | null;

interface PieceRule {
  kind: RuleKind;
  /** A preference gives way where no place can keep it. */
  preference?: true;
  breach(stand: Stand, site: Site): Breach;
}

interface PairRule {
  kind: RuleKind;
  broken(a: Stand, b: Stand, rules: Pick<RuleSettings, 'oneDouble'>): boolean;
}

// A bed whose headboard or skirting keeps it this far off still stands at the wall: the project's choice.
const AT_WALL = 0.1;

const kept = null;
const broken = (found: { id: string } | undefined): Breach => found?.id ?? kept;
const unless = (good: boolean): Breach => (good ? kept : '');

/** What one piece must respect in its room. That the zone lies on the supported map is asked of the map, not here. */
export const PIECE_RULES: readonly PieceRule[] = [
  { kind: 'outside-room', breach: ({ foot }, { room }) => unless(boxInside(foot, room.outline)) },
  {
    kind: 'on-fixture',
    breach: ({ foot }, { fixtures }) => broken(fixtures.find(({ ring }) => boxMeetsRing(foot, ring))),
  },
  {
    kind: 'head-off-wall',
    breach: (stand, site) => unless(stand.piece.kind !== 'bed' || backWall(stand, site) !== null),
  },
  {
    kind: 'back-off-wall',
    breach: (stand, site) =>
      unless(
        stand.piece.kind !== 'desk' ||
          backWall(stand, site) !== null ||
          (site.rules.deskSideways && isSideways(stand, site)),
      ),
  },
  {
    kind: 'head-across-door',
    breach: (stand, site) =>
      stand.piece.kind === 'bed' ? behindHead(stand, site, ({ doors }) => doors) : kept,
  },
  {
    kind: 'before-door',
    breach: ({ foot }, { landings }) => broken(landings.find(({ box }) => boxesOverlap(foot, box))),
  },
  {
    kind: 'in-door-swing',
    breach: ({ foot }, { leaves }) => broken(leaves.find(({ leaf }) => boxMeetsLeaf(foot, leaf))),
  },
  {
    kind: 'access',
    breach: ({ reach }, { room, fixtures }) =>
      boxInside(reach, room.outline) ? broken(fixtures.find(({ ring }) => boxMeetsRing(reach, ring))) : '',
  },
  {
    kind: 'cot-near-heat',
    breach: (stand, site) =>
      stand.piece.kind === 'cot' ? nearRadiator(stand, site, COT_KEEPS.fromHeat) : kept,
  },
  {
    kind: 'cot-near-window',
    breach: ({ piece, foot }, { windows }) =>
      piece.kind === 'cot'
        ? broken(windows.find(({ ring }) => distanceToRing(foot, ring) < COT_KEEPS.fromWindow - TOLERANCE))
        : kept,
  },
  {
    kind: 'head-under-window',
    preference: true,
    breach: (stand, site) =>
      site.rules.headClearOfWindow && stand.piece.kind === 'bed'
        ? behindHead(stand, site, ({ windows }) => windows)
        : kept,
  },
  {
    kind: 'near-radiator',
    preference: true,
    breach: (stand, site) =>
      stand.piece.kind === 'bed' ? nearRadiator(stand, site, site.rules.bedToRadiator) : kept,
  },
  {
    kind: 'wardrobe-front',
    preference: true,
    breach: ({ foot }, { fixtures }) =>
      broken(fixtures.find(({ front }) => front !== null && boxesOverlap(foot, front))),
  },
];

/** What two pieces of one room must respect; strips may share floor. */
export const PAIR_RULES: readonly PairRule[] = [
  { kind: 'overlap', broken: (a, b) => boxesOverlap(a.foot, b.foot) },
  { kind: 'access-taken', broken: (a, b) => boxesOverlap(a.foot, b.reach) || boxesOverlap(a.reach, b.foot) },
  {
    kind: 'cot-near-piece',
    broken: (a, b) =>
      (a.piece.kind === 'cot' || b.piece.kind === 'cot') &&
      nearerThan(a.foot, b.foot, COT_KEEPS.fromPiece - TOLERANCE),
  },
  { kind: 'two-doubles', broken: (a, b, { oneDouble }) => oneDouble && sleepsTwo(a) && sleepsTwo(b) },
];

/** What overlaps takes access too. */
const TOGETHER = PAIR_RULES.filter(({ kind }) => kind !== 'overlap');

/** Whether two stands may be together in a home. */
export function together(a: Stand, b: Stand, rules: Pick<RuleSettings, 'oneDouble'>): boolean {
  if (a.room !== b.room) return true;
  for (const rule of TOGETHER) if (rule.broken(a, b, rules)) return false;
  return true;
}

const sleepsTwo = ({ piece: { kind, uses } }: Stand): boolean =>
  kind === 'bed' && uses.some(({ who }) => who !== uses[0].who);

function nearRadiator({ foot }: Stand, { fixtures }: Site, least: number): Breach {
  return broken(
    fixtures.find(({ kind, ring }) => kind === 'radiator' && distanceToRing(foot, ring) < least - TOLERANCE),
  );
}

/** Whether a piece stands with its left or right side to a wall. */
export const isSideways = (stand: Stand, site: Site): boolean =>
  backWall(stand, site, 'left') !== null || backWall(stand, site, 'right') !== null;

/**
 * The wall that the whole head or back of a piece stands at, or another of its sides, and the stretch of it that it covers;
 * null for none.
 */
export function backWall(
  { piece, pose }: Stand,
  { walls }: Site,
  side: WallSide = 'head',
): { wall: Wall; from: number; to: number } | null {
  const [w, l] = [piece.size[0] / 2, piece.size[1] / 2];
  const [deep, local] = SIDE_ENDS[side](w, l);
  const ends = local.map((p) => toPlan(pose, p));
  for (const wall of walls) {
    const off = (p: Point) => Math.abs(cross(wall.along, sub(p, wall.a)));
    const places = ends.map((p) => dot(wall.along, sub(p, wall.a)));
    const [from, to] = [Math.min(...places), Math.max(...places)];
    // A foot at the wall is as near as a head in a room no longer than the bed: the back faces the wall.
    const faces = dot(sub(pose.at, wall.a), wall.inward) >= deep - TOLERANCE;
    if (faces && ends.every((p) => off(p) <= AT_WALL) && from >= -TOLERANCE && to <= wall.length + TOLERANCE)
      return { wall, from, to };
  }
  return null;
}

/** Half the depth of a piece behind one of its sides, and that side's ends. */
const SIDE_ENDS: Record<WallSide, (w: number, l: number) => [number, Point[]]> = {
  head: (w, l) => [
    l,
    [
      [-w, l],
      [w, l],
    ],
  ],
  left: (w, l) => [
    w,
    [
      [w, -l],
      [w, l],
    ],
  ],
  right: (w, l) => [
    w,
    [
      [-w, -l],
      [-w, l],
    ],
  ],
};

function behindHead(stand: Stand, site: Site, openings: (wall: Wall) => readonly Stretch[]): Breach {
  const back = backWall(stand, site);
  if (!back) return kept;
  return broken(
    openings(back.wall).find(({ from, to }) => Math.min(to, back.to) - Math.max(from, back.from) > TOLERANCE),
  );
}
