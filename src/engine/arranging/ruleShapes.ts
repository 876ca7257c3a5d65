import { boxesOverlap, boxInside, boxMeetsRing, corners, type Box, type Leaf } from './box';
import { usedSides, type Stand } from './stand';
import { COT_KEEPS } from './ruleSettings';
import type { BrokenRule, RuleKind } from './rules';
import { distance, type Point, type Ring } from '../geometry/point';
import type { Site } from './site';

/** Something on the plan that a piece must respect, and whether it does not. */
interface Kept {
  broken: boolean;
}

/** The rules of a room as shapes on the plan, for one piece where it stands. Metres. */
export interface RuleShapes {
  /** The room, inside which all of it lies. */
  room: Ring;
  /** Floor beside the piece from which it is used. */
  strips: ({ ring: Ring } & Kept)[];
  /** Floor before doors and gaps. */
  landings: ({ ring: Ring } & Kept)[];
  /** Quarter discs that doors sweep. */
  leaves: ({ leaf: Leaf } & Kept)[];
  /** Lines and outlines (closed) that a cot keeps some metres from: windows and radiators. */
  cotKeepsFrom: ({ ring: Ring; closed: boolean; metres: number } & Kept)[];
  /** From a door to each used side, where the middle of somebody walks. */
  routes: (readonly Point[])[];
}

/** A way no longer than a step need not be shown, metres. */
const STEP = 0.3;

const lengthOf = (line: readonly Point[]): number =>
  line.slice(1).reduce((sum, p, i) => sum + distance(line[i], p), 0);

/** What a piece and its room are asked, drawn: `neighbours` are the other pieces of the room. */
export function ruleShapes({
  stand,
  site,
  neighbours,
  broken,
  routes,
}: {
  stand: Stand;
  site: Site;
  neighbours: readonly Stand[];
  broken: readonly BrokenRule[];
  routes: readonly (readonly Point[] | null)[];
}): RuleShapes {
  const breaks = (kind: RuleKind, id: string) =>
    broken.some((rule) => rule.kind === kind && rule.with === id);
  const { room, landings, leaves, fixtures, windows } = site;
  const isCot = stand.piece.kind === 'cot';
  return {
    room: room.outline,
    strips: usedSides(stand).map((box) => ({ ring: corners(box), broken: isTaken(box, site, neighbours) })),
    landings: landings
      .filter(({ box }) => box.hy > 0)
      .map(({ id, box }) => ({ ring: corners(box), broken: breaks('before-door', id) })),
    leaves: leaves.map(({ id, leaf }) => ({ leaf, broken: breaks('in-door-swing', id) })),
    cotKeepsFrom: !isCot
      ? []
      : [
          ...fixtures
            .filter(({ kind }) => kind === 'radiator')
            .map(({ id, ring }) => ({
              ring,
              closed: true,
              metres: COT_KEEPS.fromHeat,
              broken: breaks('cot-near-heat', id),
            })),
          ...windows.map(({ id, ring }) => ({
            ring,
            closed: false,
            metres: COT_KEEPS.fromWindow,
            broken: breaks('cot-near-window', id),
          })),
        ],
    routes: routes.flatMap((route) => (route && lengthOf(route) >= STEP ? [route] : [])),
  };

  function isTaken(box: Box, { fixtures }: Site, others: readonly Stand[]): boolean {
    return (
      !boxInside(box, room.outline) ||
      fixtures.some(({ ring }) => boxMeetsRing(box, ring)) ||
      others.some(({ foot }) => boxesOverlap(box, foot))
    );
  }
}
