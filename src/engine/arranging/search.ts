/** One candidate for every piece, the least sum of costs, and whether no other choice is lower. */
export interface Found {
  /** Index into each piece's candidates; null where no choice keeps all the rules, or none was met in time. */
  chosen: number[] | null;
  cost: number;
  proven: boolean;
  nodes: number;
}

export interface Limits {
  /** Most nodes looked at. */
  budget: number;
  cancelled?: () => boolean;
}

/** Sets of candidates that may be together with one candidate, as bits. */
export type Compatible = (piece: number, candidate: number, other: number) => Uint32Array;

/**
 * Bits of the other piece's candidates that may be together with a candidate, worked out on first use and kept, so that
 * several searches of one plan share them.
 */
export function compatibility(
  counts: readonly number[],
  together: (piece: number, candidate: number, other: number, otherCandidate: number) => boolean,
): Compatible {
  const rows = counts.map((count) => counts.map(() => new Array<Uint32Array | undefined>(count)));
  return (piece, candidate, other) => {
    const known = rows[piece][other][candidate];
    if (known) return known;
    const row = emptyBits(counts[other]);
    for (let i = 0; i < counts[other]; i++) {
      if (together(piece, candidate, other, i)) row[i >> 5] |= 1 << (i & 31);
    }
    rows[piece][other][candidate] = row;
    return row;
  };
}

// How often a long search asks whether it is still wanted, in nodes.
const ASK = 1024;

/**
 * The exact least total over one candidate a piece, pairwise compatible: depth first on the piece with the fewest live
 * candidates, these in order of cost, with the sum of the cheapest live candidates of the others as bound (Land & Doig
 * 1960). `costs` ascend within each piece; `allowed` narrows a piece's candidates. Equal totals: the first met stays, so the
 * answer depends on the input alone.
 */
export function search(
  costs: readonly ArrayLike<number>[],
  compatible: Compatible,
  limits: Limits,
  allowed: (piece: number, candidate: number) => boolean = () => true,
): Found {
  const pieces = costs.length;
  const found: Found = { chosen: null, cost: Infinity, proven: true, nodes: 0 };
  const chosen = new Array<number>(pieces).fill(-1);
  const start = costs.map((own, piece) => {
    const bits = emptyBits(own.length);
    for (let i = 0; i < own.length; i++) if (allowed(piece, i)) bits[i >> 5] |= 1 << (i & 31);
    return bits;
  });

  const spent = (): boolean => {
    found.nodes++;
    const asked = found.nodes % ASK === 0 && limits.cancelled?.();
    if (found.nodes > limits.budget || asked) found.proven = false;
    return !found.proven;
  };

  const place = (live: readonly Uint32Array[], placed: number): void => {
    let piece = -1;
    let fewest = Infinity;
    let cheapest = 0;
    for (let p = 0; p < pieces; p++) {
      if (chosen[p] >= 0) continue;
      const first = nextBit(live[p], 0);
      if (first < 0) return;
      cheapest += costs[p][first];
      const count = countBits(live[p]);
      if (count < fewest) [piece, fewest] = [p, count];
    }
    if (piece < 0) {
      if (placed < found.cost) [found.cost, found.chosen] = [placed, [...chosen]];
      return;
    }
    const others = cheapest - costs[piece][nextBit(live[piece], 0)];
    for (let i = nextBit(live[piece], 0); i >= 0; i = nextBit(live[piece], i + 1)) {
      if (placed + costs[piece][i] + others >= found.cost || spent()) return;
      chosen[piece] = i;
      const left = live.map((bits, p) => (chosen[p] >= 0 ? bits : both(bits, compatible(piece, i, p))));
      place(left, placed + costs[piece][i]);
      chosen[piece] = -1;
    }
  };
  place(start, 0);
  return found;
}

const emptyBits = (count: number): Uint32Array => new Uint32Array((count + 31) >> 5);

function both(a: Uint32Array, b: Uint32Array): Uint32Array {
  const shared = new Uint32Array(a.length);
  for (let i = 0; i < a.length; i++) shared[i] = a[i] & b[i];
  return shared;
}

/** The first set bit at or after `from`; −1 for none. */
function nextBit(bits: Uint32Array, from: number): number {
  let word = from >> 5;
  if (word >= bits.length) return -1;
  let value = bits[word] & (-1 << (from & 31));
  while (value === 0) {
    if (++word >= bits.length) return -1;
    value = bits[word];
  }
  return (word << 5) + 31 - Math.clz32(value & -value);
}

/** Set bits, by adding neighbours in parallel (Warren 2012, section 5-1). */
function countBits(bits: Uint32Array): number {
  let count = 0;
  for (let word of bits) {
    word -= (word >>> 1) & 0x55555555;
    word = (word & 0x33333333) + ((word >>> 2) & 0x33333333);
    count += (((word + (word >>> 4)) & 0x0f0f0f0f) * 0x01010101) >>> 24;
  }
  return count;
}
