import { both, isMarked, mark, nextMark, noMarks, unmark, type Marks } from './sets';
import { searchRoom, type Placing, type RoomAnswer } from './searchRoom';
import { together, type BrokenRule } from './rules';
import type { Candidate } from './candidates';
import type { Effort } from './effort';
import type { RuleSettings } from './ruleSettings';
import type { Stand } from './stand';

/** The candidates of a piece that a question is about, room by room; its number there tells them from other candidates there. */
export interface Domain {
  ids: readonly number[];
  open: readonly Marks[];
}

/** What is asked of a room: some pieces by number, ascending, each with its domain. */
interface Members {
  room: number;
  pieces: readonly number[];
  domains: readonly Domain[];
}

/** Least costs of sets of pieces in one room each, worked out when asked for and kept for all questions of one plan. */
export interface RoomValues {
  /** No choice costs less than this. */
  bound(members: Members): number;
  /** The exact least cost where it is under the cutoff. */
  value(members: Members, effort: Effort, cutoff?: number): RoomAnswer;
  /** A domain of those candidates of a piece that `wanted` takes; asked again for the same, the same domain. */
  domain(piece: number, name: string, wanted: (candidate: Candidate) => boolean): Domain;
  /** Candidates of another piece of a room that may be together with one. */
  compatible(room: number, piece: number, candidate: number, other: number): Marks;
  /** The first of some placed pieces of a room that cuts something off, with those before it; null where none does. */
  cutOff(room: number, placed: readonly Placing[]): number | null;
  /** Whether a candidate may stand there with nothing else about. */
  stands(piece: number, room: number, candidate: number): boolean;
}

/** `lost` tells what stands of one room cut off. */
export function roomValues(
  candidates: readonly (readonly Candidate[])[][],
  rules: RuleSettings,
  lost: (room: number, stands: readonly Stand[]) => BrokenRule | null,
): RoomValues {
  const standOf = (room: number, piece: number, candidate: number) =>
    candidates[piece][room][candidate].stand;
  const costs = candidates.map((rooms) => rooms.map((own) => Float64Array.from(own, ({ cost }) => cost)));
  /** Of each candidate, some of another piece's candidates in the room. */
  const marksOf = () =>
    candidates.map((rooms) =>
      rooms.map((own) => candidates.map(() => new Array<Marks | undefined>(own.length))),
    );
  const rows = marksOf();
  const alone = candidates.map((rooms) => rooms.map((own) => new Int8Array(own.length)));
  const domains = new Map<string, Domain>();
  const numbers = new Map<string, number>();
  const answers = new Map<string, RoomAnswer>();

  const compatible = (room: number, piece: number, candidate: number, other: number): Marks => {
    const known = rows[piece][room][other][candidate];
    if (known) return known;
    const row = noMarks(candidates[other][room].length);
    const own = standOf(room, piece, candidate);
    candidates[other][room].forEach(({ stand }, i) => {
      if (together(own, stand, rules)) mark(row, i);
    });
    rows[piece][room][other][candidate] = row;
    return row;
  };

  const stands = (piece: number, room: number, candidate: number): boolean => {
    const known = alone[piece][room];
    if (known[candidate] === 0) known[candidate] = lost(room, [standOf(room, piece, candidate)]) ? -1 : 1;
    return known[candidate] > 0;
  };

  const areLost = (room: number, placed: readonly Placing[]): boolean =>
    lost(
      room,
      placed.map(({ piece, candidate }) => standOf(room, piece, candidate)),
    ) !== null;

  /** Pairs, and larger sets, that were looked at and cut nothing off. */
  const clearedPairs = marksOf();
  const cleared = new Set<string>();
  const pairCutsOff = (room: number, a: Placing, b: Placing): boolean => {
    const known = (clearedPairs[a.piece][room][b.piece][a.candidate] ??= noMarks(
      candidates[b.piece][room].length,
    ));
    if (isMarked(known, b.candidate)) return false;
    if (areLost(room, [a, b])) return true;
    mark(known, b.candidate);
    return false;
  };
  const cutsOff = (room: number, placed: readonly Placing[]): boolean => {
    let key = `${room}`;
    for (const { piece, candidate } of placed) key += ` ${piece}/${candidate}`;
    if (cleared.has(key)) return false;
    if (areLost(room, placed)) return true;
    cleared.add(key);
    return false;
  };

  /** Two candidates that cut something off together are from now on not compatible. */
  const part = (room: number, a: Placing, b: Placing) => {
    unmark(compatible(room, a.piece, a.candidate, b.piece), b.candidate);
    unmark(compatible(room, b.piece, b.candidate, a.piece), a.candidate);
  };

  const cutOff = (room: number, placed: readonly Placing[]): number | null => {
    if (placed.length > 1 && !cutsOff(room, placed)) return null;
    for (let last = 0; last < placed.length; last++) {
      const own = placed[last];
      if (!stands(own.piece, room, own.candidate)) return last;
      const against = placed.slice(0, last).filter((other) => {
        const row = compatible(room, own.piece, own.candidate, other.piece);
        if (isMarked(row, other.candidate) && !pairCutsOff(room, own, other)) return false;
        part(room, own, other);
        return true;
      });
      if (against.length > 0) return last;
      // All together they do, or it would not have come to this.
      if (last > 1 && (last === placed.length - 1 || cutsOff(room, placed.slice(0, last + 1)))) return last;
    }
    return null;
  };

  const keyOf = ({ room, pieces, domains: own }: Members) =>
    `${room}:${pieces.map((piece, i) => `${piece}/${own[i].ids[room]}`).join(' ')}`;

  const without = ({ room, pieces, domains: own }: Members, i: number): Members => ({
    room,
    pieces: pieces.toSpliced(i, 1),
    domains: own.toSpliced(i, 1),
  });

  const cheapest = ({ room, pieces, domains: own }: Members): number =>
    pieces.reduce((sum, piece, i) => {
      const first = nextMark(own[i].open[room], 0);
      return first < 0 ? Infinity : sum + costs[piece][room][first];
    }, 0);

  const bound = (members: Members): number => {
    if (members.pieces.length === 0) return 0;
    return answers.get(keyOf(members))?.bound ?? cheapest(members);
  };

  const value = (members: Members, effort: Effort, cutoff = Infinity): RoomAnswer => {
    const key = keyOf(members);
    const known = answers.get(key);
    if (known && (known.bound >= cutoff || known.bound === known.cost)) return known;
    const { room, pieces, domains: own } = members;
    // The rest of three or more is bounded by what it costs by itself.
    if (pieces.length > 2) pieces.forEach((_, i) => value(without(members, i), effort, cutoff));
    const subset = (bits: number): Members => ({
      room,
      pieces: pieces.filter((_, i) => bits & (1 << i)),
      domains: own.filter((_, i) => bits & (1 << i)),
    });
    const leasts = new Map<number, number>();
    const answer = searchRoom(
      {
        costs: pieces.map((piece) => costs[piece][room]),
        open: pieces.map((piece, i) => withoutFallen(own[i].open[room], alone[piece][room])),
        compatible: (piece, candidate, other) => compatible(room, pieces[piece], candidate, pieces[other]),
        cutOff: (placed) =>
          cutOff(
            room,
            placed.map(({ piece, candidate }) => ({ piece: pieces[piece], candidate })),
          ),
        ...(pieces.length > 2 && {
          least: (bits: number) => {
            const before = leasts.get(bits);
            if (before !== undefined) return before;
            const found = bound(subset(bits));
            leasts.set(bits, found);
            return found;
          },
        }),
      },
      effort,
      cutoff,
    );
    // Stopped early it may have met less than before.
    const kept = !answer.chosen && known?.chosen && known.cost < cutoff ? known : answer;
    const better = { ...kept, bound: Math.max(answer.bound, known?.bound ?? 0) };
    answers.set(key, better);
    return better;
  };

  return {
    bound,
    value,
    compatible,
    cutOff,
    stands,
    domain(piece, name, wanted) {
      const key = `${piece} ${name}`;
      const known = domains.get(key);
      if (known) return known;
      const open = candidates[piece].map((own) => {
        const marks = noMarks(own.length);
        own.forEach((candidate, i) => wanted(candidate) && mark(marks, i));
        return marks;
      });
      // What was found of a room serves all questions that leave the same candidates there.
      const ids = open.map((marks, room) => {
        const held = `${piece} ${room} ${marks.join()}`;
        const id = numbers.get(held) ?? numbers.size;
        numbers.set(held, id);
        return id;
      });
      const made = { ids, open };
      domains.set(key, made);
      return made;
    },
  };
}

/** Candidates already found not to stand by themselves are left out. */
function withoutFallen(open: Marks, alone: Int8Array): Marks {
  const left = both(open, open);
  alone.forEach((state, i) => state < 0 && unmark(left, i));
  return left;
}
