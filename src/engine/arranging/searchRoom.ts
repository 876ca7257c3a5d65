import { countMarks, narrow, nextMark, type Marks } from './sets';
import type { Effort } from './effort';

/** Some pieces to be placed in one room together. */
export interface RoomTask {
  /** Costs of each piece's candidates, ascending. */
  costs: readonly ArrayLike<number>[];
  /** Candidates still open to each piece. */
  open: readonly Marks[];
  /** Those of another piece that may be together with one. */
  compatible(piece: number, candidate: number, other: number): Marks;
  /** What some placed pieces cut off stays cut off: the first of them, in the order placed, that already do; null where all is well. */
  cutOff?(placed: readonly Placing[]): number | null;
  /** Least cost of the pieces not yet placed by themselves, where it is known: bits of pieces. */
  least?(pieces: number): number;
}

/** A candidate for a piece. */
export interface Placing {
  piece: number;
  candidate: number;
}

/** One candidate a piece, and their total. */
export interface RoomAnswer {
  /** Null where no choice costs less than asked for, or none was met in time. */
  chosen: number[] | null;
  cost: number;
  /** No choice costs less than this; it is the cost where the answer is proven. */
  bound: number;
}

/**
 * The exact least total over one candidate a piece, pairwise compatible and cutting nothing off, under `cutoff`: depth first
 * on the piece with the fewest open candidates, these in order of cost; the bound is the sum of the cheapest open ones, or
 * what the rest costs by itself (Land & Doig 1960). What is cut off is looked at last, and the search goes back to the piece
 * that did it. Equal totals: the first met stays, so that the answer depends on the input alone.
 */
export function searchRoom(task: RoomTask, effort: Effort, cutoff = Infinity): RoomAnswer {
  const { costs, compatible } = task;
  const pieces = costs.length;
  const best: RoomAnswer = { chosen: null, cost: cutoff, bound: cutoff };
  const placed: Placing[] = [];
  const chosen = new Array<number>(pieces).fill(-1);
  /** What is open to each piece once so many are placed, and how much: a search goes through thousands of such states. */
  const states = Array.from({ length: pieces + 1 }, (_, depth) => ({
    open: task.open.map((marks) => (depth === 0 ? marks : marks.slice())),
    counts: task.open.map(countMarks),
  }));

  /** Places one more piece; gives the depth to go back to. */
  const place = (cost: number, rest: number): number => {
    const depth = placed.length;
    if (rest === 0) {
      const cut = task.cutOff?.(placed) ?? null;
      if (cut !== null) return cut;
      [best.cost, best.chosen] = [cost, [...chosen]];
      return depth;
    }
    const { open, counts } = states[depth];
    let piece = -1;
    let fewest = Infinity;
    let cheapest = 0;
    for (let p = 0; p < pieces; p++) {
      if (chosen[p] >= 0) continue;
      const first = nextMark(open[p], 0);
      if (first < 0) return depth;
      cheapest += costs[p][first];
      if (counts[p] < fewest) [piece, fewest] = [p, counts[p]];
    }
    const others = cheapest - costs[piece][nextMark(open[piece], 0)];
    const left = rest & ~(1 << piece);
    const known = left === 0 ? 0 : Math.max(others, task.least?.(left) ?? 0);
    const whole = task.least?.(rest) ?? 0;
    for (let i = nextMark(open[piece], 0); i >= 0; i = nextMark(open[piece], i + 1)) {
      const least = cost + Math.max(costs[piece][i] + known, whole);
      if (least >= best.cost) return depth;
      if (effort.spent()) {
        best.bound = Math.min(best.bound, least);
        return depth;
      }
      chosen[piece] = i;
      placed.push({ piece, candidate: i });
      const next = states[depth + 1];
      for (let p = 0; p < pieces; p++)
        if (chosen[p] < 0) next.counts[p] = narrow(open[p], compatible(piece, i, p), next.open[p]);
      const back = place(cost + costs[piece][i], left);
      placed.pop();
      chosen[piece] = -1;
      if (back < depth) return back;
    }
    return depth;
  };
  place(0, (1 << pieces) - 1);
  return { ...best, bound: Math.min(best.bound, best.cost), cost: best.chosen ? best.cost : Infinity };
}
