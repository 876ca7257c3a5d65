import { both, countMarks, nextMark, type Marks } from './sets';
import type { Assigned } from './assignRooms';
import type { Candidate } from './candidates';
import type { Domain, RoomValues } from './roomValues';
import type { Effort } from './effort';
import type { Placing } from './searchRoom';

// Of choices that leave the worst off alike, the better mean: a thousandth of it decides.
const MEAN = 1e-3;

interface Spot {
  room: number;
  candidate: number;
  /** Dose of each person there, µT·h. */
  doses: Float64Array;
  sum: number;
}

/**
 * The choice of places that leaves the worst-off person with the least dose, and of such choices the one with the least
 * mean: its cost is the largest personal dose plus a thousandth of the mean. People use pieces in several rooms, so that
 * rooms cannot be searched apart: depth first over all rooms, on the piece with the fewest places left; the bound is what
 * each person has already and the least that every piece still to come gives that person anywhere.
 */
export function worstOff(
  hands: readonly { piece: { uses: readonly { who: string }[] }; rooms: readonly (readonly Candidate[])[] }[],
  domains: readonly Domain[],
  values: RoomValues,
  effort: Effort,
  { cutoff = Infinity, met }: { cutoff?: number; met?: (cost: number) => void } = {},
): Assigned {
  const people = [...new Set(hands.flatMap(({ piece }) => piece.uses.map(({ who }) => who)))];
  const spots = hands.map((hand, piece) => spotsOf(hand, domains[piece], people));
  const least = spots.map((own) =>
    people.map((_, person) => own.reduce((low, { doses }) => Math.min(low, doses[person]), Infinity)),
  );
  const best: Assigned = { chosen: null, cost: cutoff, bound: cutoff };
  const placed: (Placing & { room: number })[] = [];
  const at = new Array<Spot | undefined>(hands.length);

  const worth = (doses: ArrayLike<number>): number => {
    let [most, sum] = [0, 0];
    for (let q = 0; q < doses.length; q++) {
      most = Math.max(most, doses[q]);
      sum += doses[q];
    }
    return most + (MEAN * sum) / Math.max(1, doses.length);
  };

  const place = (open: readonly (readonly Marks[])[], now: Float64Array): void => {
    const rest = [...hands.keys()].filter((piece) => !at[piece]);
    if (rest.length === 0) {
      const cost = worth(now);
      const cut = [...new Set(placed.map(({ room }) => room))].some(
        (room) =>
          values.cutOff(
            room,
            placed.filter((one) => one.room === room),
          ) !== null,
      );
      if (cut || cost >= best.cost) return;
      [best.cost, best.chosen] = [cost, at.map((spot) => ({ room: spot!.room, candidate: spot!.candidate }))];
      met?.(cost);
      return;
    }
    const counts = rest.map((piece) => open[piece].reduce((sum, marks) => sum + countMarks(marks), 0));
    const fewest = Math.min(...counts);
    if (fewest === 0) return;
    const piece = rest[counts.indexOf(fewest)];
    const later = people.map((_, person) =>
      rest.reduce((sum, other) => (other === piece ? sum : sum + least[other][person]), 0),
    );
    for (const spot of spots[piece]) {
      if (nextMark(open[piece][spot.room], spot.candidate) !== spot.candidate) continue;
      const then = now.map((dose, person) => dose + spot.doses[person]);
      const bound = worth(then.map((dose, person) => dose + later[person]));
      if (bound >= best.cost) continue;
      if (effort.spent()) {
        best.bound = Math.min(best.bound, bound);
        continue;
      }
      at[piece] = spot;
      placed.push({ piece, candidate: spot.candidate, room: spot.room });
      place(
        open.map((marks, other) =>
          at[other]
            ? marks
            : marks.map((own, room) =>
                room === spot.room ? both(own, values.compatible(room, piece, spot.candidate, other)) : own,
              ),
        ),
        then,
      );
      placed.pop();
      at[piece] = undefined;
    }
  };
  place(
    domains.map(({ open }) => open),
    new Float64Array(people.length),
  );
  return { ...best, bound: Math.min(best.bound, best.cost), cost: best.chosen ? best.cost : Infinity };
}

/** The places of a piece in a domain, least dose first; where it is found before others of the same. */
function spotsOf(
  { piece, rooms }: { piece: { uses: readonly { who: string }[] }; rooms: readonly (readonly Candidate[])[] },
  { open }: Domain,
  people: readonly string[],
): Spot[] {
  return rooms
    .flatMap((own, room) =>
      own.flatMap((place, candidate): Spot[] => {
        if (nextMark(open[room], candidate) !== candidate) return [];
        const doses = new Float64Array(people.length);
        piece.uses.forEach(({ who }, use) => (doses[people.indexOf(who)] += place.doses[use]));
        return [{ room, candidate, doses, sum: place.cost }];
      }),
    )
    .sort((a, b) => a.sum - b.sum);
}
