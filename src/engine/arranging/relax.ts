import { assignRooms } from './assignRooms';
import { AS_FOUND, choiceOf, type Candidate } from './candidates';
import { boxesOverlap } from './box';
import { byCost, keptBy, roomsFor, sorted, standAsFound, type Grounds } from './plan';
import { checkArrangement } from './check/checkArrangement';
import { effortWithin, type Limits } from './effort';
import { isSideways } from './rules';
import { LEAST_LANDING, LEAST_PATH, type RuleSettings } from './ruleSettings';
import { roomAt, siteOf, type Site } from './site';
import { roomValues } from './roomValues';
import { waysOf } from './floor/ways';
import type { ArrangePiece, ArrangeRequest } from './request';
import type { Put } from './place';

/** One thing less that is asked for, in metres where it has a measure. */
export type Relaxation =
  | { kind: 'strip'; piece: string; side: 'left' | 'right' | 'foot'; from: number; to: number }
  | { kind: 'landing'; from: number; to: number }
  | { kind: 'path'; from: number; to: number }
  | { kind: 'desk-sideways' };

/** Access strips in steps, metres: as asked for, and lower. The project's choice. */
const STRIPS = [Infinity, 0.6, 0.45];

const SIDES = ['left', 'right', 'foot'] as const;

// What a desk across the room costs beside a strip or a landing that loses so many metres: the project's choice.
const SIDEWAYS = 0.3;

/**
 * The request with the least asked for that must be given up so that all its pieces find a place; null where they find none
 * even so. Given up are metres: of a piece's strips, of the landings, of the path's width; a desk that stands sideways counts
 * as so many. The search is the planner's own, over the same places with the strips in steps, their price for a cost. What
 * keeps a cot safe, a door and an escape open is never given up.
 */
export function relaxed(request: ArrangeRequest, ground: Grounds, limits: Limits): ArrangeRequest | null {
  const narrower = { ...request.rules, path: Math.min(request.rules.path, LEAST_PATH) };
  const lost = request.rules.path - narrower.path;
  const asAsked = cheapest(request, request.rules, ground, limits, Infinity);
  const inNarrow =
    lost > 0 ? cheapest(request, narrower, ground, limits, (asAsked?.price ?? Infinity) - lost) : null;
  return inNarrow?.request ?? asAsked?.request ?? null;
}

function cheapest(
  request: ArrangeRequest,
  rules: RuleSettings,
  ground: Grounds,
  limits: Limits,
  cutoff: number,
): { request: ArrangeRequest; price: number } | null {
  const { rooms, step } = request;
  const loose = {
    ...request,
    rules: { ...rules, landing: Math.min(rules.landing, LEAST_LANDING), deskSideways: true },
  };
  const siteIn = (asked: ArrangeRequest) =>
    keptBy((room: string) =>
      siteOf(
        asked,
        rooms.find(({ id }) => id === room)!,
      ),
    );
  const [site, strictSite] = [siteIn(loose), siteIn(request)];
  const { movable, left } = sorted(request.pieces);
  const fixed = request.pieces
    .filter((piece) => piece.locked || left.includes(piece))
    .flatMap((piece) => standAsFound(request, piece, site) ?? []);
  const hands = movable.map((piece) => {
    const here = roomAt(request, piece.level, piece.at);
    const allowed = roomsFor(request, piece, here);
    return rooms.map((room) => {
      if (!allowed.includes(room)) return [];
      const places = lowered(piece).flatMap(
        (variant) =>
          choiceOf(variant, site(room.id), ground(room.id, piece.height), {
            step,
            fixed,
            standsHere: here?.id === room.id,
          }).candidates,
      );
      return places
        .map((place): Candidate => ({ ...place, cost: priceOf(place, piece, strictSite(room.id)) }))
        .sort(byCost);
    });
  });
  const ways = keptBy((room: string) =>
    waysOf(
      site(room),
      fixed.filter((stand) => stand.room === room),
    ),
  );
  const values = roomValues(hands, loose.rules, (room, stands) =>
    ways(rooms[room].id).lost(stands.map((stand) => [stand])),
  );
  const domains = movable.map((_, piece) => values.domain(piece, 'anywhere', () => true));
  const { chosen, cost } = assignRooms(rooms.length, domains, values, effortWithin(limits), { cutoff });
  if (!chosen) return null;
  const places = chosen.map(({ room, candidate }, piece) => hands[piece][room][candidate]);
  const strict = ({ stand }: Candidate) => strictSite(stand.room);
  return {
    price: cost,
    request: {
      ...request,
      rules: {
        ...rules,
        landing: places.some((place) => onLanding(place, strict(place)))
          ? loose.rules.landing
          : rules.landing,
        deskSideways: rules.deskSideways || places.some((place) => standsSideways(place, strict(place))),
      },
      pieces: request.pieces.map(
        (piece) => places.find(({ stand }) => stand.piece.id === piece.id)?.stand.piece ?? piece,
      ),
    },
  };
}

/** A piece with its strips in steps; those that ask for less already are left. */
function lowered(piece: ArrangePiece): ArrangePiece[] {
  const most = Math.max(...SIDES.map((side) => piece.access[side]));
  return STRIPS.filter((strip) => strip === Infinity || strip < most).map((strip) =>
    strip === Infinity
      ? piece
      : {
          ...piece,
          access: {
            left: Math.min(piece.access.left, strip),
            right: Math.min(piece.access.right, strip),
            foot: Math.min(piece.access.foot, strip),
          },
        },
  );
}

/** Metres given up at a place. What nobody uses and stays where it is gives up nothing. */
function priceOf(place: Candidate, piece: ArrangePiece, site: Site): number {
  if (place.wall === AS_FOUND && piece.uses.length === 0) return 0;
  const { access } = place.stand.piece;
  const strips = SIDES.reduce((sum, side) => sum + piece.access[side] - access[side], 0);
  const landing = onLanding(place, site) ? site.rules.landing - LEAST_LANDING : 0;
  return strips + landing + (standsSideways(place, site) ? SIDEWAYS : 0);
}

const onLanding = ({ stand }: Candidate, { landings }: Site): boolean =>
  landings.some(({ box }) => boxesOverlap(stand.foot, box));

const standsSideways = ({ stand, wall }: Candidate, site: Site): boolean =>
  stand.piece.kind === 'desk' && wall !== AS_FOUND && !site.rules.deskSideways && isSideways(stand, site);

/** What one request asks less than another, at the places that were found under it: strips that these leave whole count as kept. */
export function given(asked: ArrangeRequest, less: ArrangeRequest, places: readonly Put[]): Relaxation[] {
  let now = less;
  const strips = asked.pieces.flatMap((piece): Relaxation[] =>
    SIDES.flatMap((side) => {
      const lower = now.pieces.find(({ id }) => id === piece.id)!;
      if (lower.access[side] >= piece.access[side]) return [];
      const access = { ...lower.access, [side]: piece.access[side] };
      const whole = { ...now, pieces: now.pieces.map((one) => (one === lower ? { ...lower, access } : one)) };
      if (checkArrangement(whole, places).length === 0) {
        now = whole;
        return [];
      }
      return [{ kind: 'strip', piece: piece.id, side, from: piece.access[side], to: lower.access[side] }];
    }),
  );
  const measures = (['landing', 'path'] as const).flatMap((kind): Relaxation[] =>
    less.rules[kind] < asked.rules[kind] ? [{ kind, from: asked.rules[kind], to: less.rules[kind] }] : [],
  );
  const sideways = less.rules.deskSideways && !asked.rules.deskSideways;
  return [...strips, ...measures, ...(sideways ? [{ kind: 'desk-sideways' } as const] : [])];
}
