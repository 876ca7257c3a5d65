import { broken, clash } from './rules';
import { Floor } from './ways';
import { placesAtWalls, type Place } from './places';
import { planned } from './doses';
import { winding } from './shapes';
import type { ArrangePiece, ArrangeRequest } from '../../../src/engine/arranging/request';

/** A place that keeps the hard rules by itself, and what it costs, µT·h. */
interface Option {
  place: Place;
  tidy: boolean;
  cost: number;
}

/** All pieces placed, and what that costs, µT·h summed over users. */
interface Choice {
  places: Place[];
  cost: number;
}

/** A home's places tried in every combination: one level, rooms whose doors are their own. */
export interface Tried {
  /** A piece without any place by the rules of room and fixtures alone; null where there is none. */
  homeless: ArrangePiece | null;
  /** The least planned dose; null where the pieces do not fit. */
  least(wanted?: (place: Place) => boolean): Choice | null;
}

export function tryEverything(request: ArrangeRequest): Tried {
  const floors = new Map(request.rooms.map(({ id }) => [id, new Floor(request, id)]));
  const hands = request.pieces.map((piece) => optionsOf(request, piece));
  const homeless = request.pieces.find((_, i) => hands[i].length === 0) ?? null;
  const standing = hands.map((hand) => hand.filter(({ place }) => floors.get(place.room)!.allows([place])));
  return {
    homeless,
    least(wanted = () => true) {
      const among = standing.map((hand) => hand.filter(({ place }) => wanted(place)));
      const tidy = among.map((hand) =>
        hand.some((one) => one.tidy) ? hand.filter((one) => one.tidy) : hand,
      );
      return leastOf(request, floors, tidy) ?? leastOf(request, floors, among);
    },
  };
}

function optionsOf(request: ArrangeRequest, piece: ArrangePiece): Option[] {
  const places = (piece.mayStandIn ?? []).flatMap((id) => placesAtWalls(request, piece, id));
  const here = request.rooms.find(({ outline }) => winding(outline, piece.at) !== 0);
  const found =
    here && piece.mayStandIn?.includes(here.id)
      ? [false, true].map((mirrored): Place => ({
          piece,
          room: here.id,
          x: piece.at[0],
          y: piece.at[1],
          angle: piece.angle,
          mirrored,
          wall: -1,
        }))
      : [];
  // What nobody uses may stay however it stands.
  const stays = piece.uses.length === 0 ? found : [];
  return [...places, ...found].flatMap((place): Option[] => {
    const { hard, preferred } = broken(request, place);
    if (hard.length > 0) return stays.includes(place) ? [{ place, tidy: true, cost: 0 }] : [];
    return [{ place, tidy: preferred.length === 0, cost: planned(request, place) }];
  });
}

/** Every combination whose cost is not yet too high, cheapest places first. */
function leastOf(
  request: ArrangeRequest,
  floors: ReadonlyMap<string, Floor>,
  hands: readonly (readonly Option[])[],
): Choice | null {
  const sorted = hands.map((hand) => hand.toSorted((a, b) => a.cost - b.cost));
  let least: Choice | null = null;
  const go = (k: number, places: readonly Place[], cost: number) => {
    if (k === sorted.length) {
      const fits = [...floors].every(([room, floor]) =>
        floor.allows(places.filter((place) => place.room === room)),
      );
      if (fits) least = { places: [...places], cost };
      return;
    }
    for (const { place, cost: own } of sorted[k]) {
      if (least && cost + own >= least.cost) return;
      if (!places.some((other) => clash(request, other, place))) go(k + 1, [...places, place], cost + own);
    }
  };
  go(0, [], 0);
  return least;
}
