import type { Domain, RoomValues } from './roomValues';
import type { Effort } from './effort';

/** A room and a candidate in it for every piece. */
export interface Assigned {
  /** Room and candidate of each piece; null where no choice costs less than asked for, or none was met in time. */
  chosen: { room: number; candidate: number }[] | null;
  cost: number;
  /** No choice costs less than this; it is the cost where the answer is proven. */
  bound: number;
}

/**
 * The exact least total of all pieces over all rooms: rooms do not disturb each other, so that a home costs what its rooms
 * cost. Depth first over the pieces, each into its rooms by rising cost; the bound is what the rooms cost at least with the
 * pieces they hold, and each piece left its cheapest room. A room is searched only when every piece has one, and what was
 * found of it serves all branches. `met` hears of each better choice.
 */
export function assignRooms(
  rooms: number,
  domains: readonly Domain[],
  values: RoomValues,
  effort: Effort,
  { cutoff = Infinity, met }: { cutoff?: number; met?: (cost: number) => void } = {},
): Assigned {
  const all = [...domains.keys()];
  const single = all.map((piece) =>
    Array.from({ length: rooms }, (_, room) => values.bound(membersOf(room, [piece], domains))),
  );
  const least = single.map((own) => Math.min(...own));
  // Those with the fewest rooms, and of these the dearest, decide most.
  const choices = single.map((own) => own.filter((cost) => cost < Infinity).length);
  const order = all.toSorted((p, q) => choices[p] - choices[q] || least[q] - least[p] || p - q);
  const best: Assigned = { chosen: null, cost: cutoff, bound: cutoff };
  const held = Array.from({ length: rooms }, (): number[] => []);
  const bounds = new Array<number>(rooms).fill(0);
  const sum = (costs: readonly number[]) => costs.reduce((total, cost) => total + cost, 0);

  const finish = () => {
    const chosen = new Array<{ room: number; candidate: number }>(all.length);
    const now = [...bounds];
    let unproven = 0;
    for (let room = 0; room < rooms; room++) {
      if (held[room].length === 0) continue;
      const cutoff = best.cost - (sum(now) - now[room]);
      const {
        chosen: found,
        cost,
        bound,
      } = values.value(membersOf(room, held[room], domains), effort, cutoff);
      unproven += Math.max(0, Math.min(cost, cutoff) - bound);
      if (!found || cost >= cutoff) {
        if (unproven > 0) best.bound = Math.min(best.bound, best.cost - unproven);
        return;
      }
      now[room] = cost;
      held[room].forEach((piece, i) => (chosen[piece] = { room, candidate: found[i] }));
    }
    const cost = sum(now);
    if (unproven > 0) best.bound = Math.min(best.bound, cost - unproven);
    if (cost >= best.cost) return;
    [best.cost, best.chosen] = [cost, chosen];
    met?.(cost);
  };

  const place = (k: number, rest: number): void => {
    if (sum(bounds) + rest >= best.cost) return;
    if (effort.spent()) {
      best.bound = Math.min(best.bound, sum(bounds) + rest);
      return;
    }
    if (k === order.length) {
      finish();
      return;
    }
    const piece = order[k];
    const later = rest - least[piece];
    const options = Array.from({ length: rooms }, (_, room) => {
      const pieces = [...held[room], piece].sort((a, b) => a - b);
      const own = single[piece][room];
      const bound =
        own === Infinity
          ? Infinity
          : Math.max(bounds[room] + own, values.bound(membersOf(room, pieces, domains)));
      return { room, pieces, bound, more: bound - bounds[room] };
    })
      .filter(({ bound }) => bound < Infinity)
      .sort((a, b) => a.more - b.more || a.room - b.room);
    for (const { room, pieces, bound } of options) {
      const [wasHeld, wasBound] = [held[room], bounds[room]];
      held[room] = pieces;
      bounds[room] = Math.max(bound, values.bound(membersOf(room, pieces, domains)));
      place(k + 1, later);
      [held[room], bounds[room]] = [wasHeld, wasBound];
    }
  };
  place(0, sum(least));
  return { ...best, bound: Math.min(best.bound, best.cost), cost: best.chosen ? best.cost : Infinity };
}

const membersOf = (room: number, pieces: readonly number[], domains: readonly Domain[]) => ({
  room,
  pieces,
  domains: pieces.map((piece) => domains[piece]),
});
