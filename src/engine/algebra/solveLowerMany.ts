import type { Cholesky } from './cholesky';

/** Columns that lie side by side: with two rows at a time all sums of the inner loop stay in registers. */
export const ABREAST = 3;

/** Columns worth solving together: each row of L is fetched once for all of them. */
export const TOGETHER = 8 * ABREAST;

/** Room for `count` columns of n numbers. */
export const abreast = (count: number, n: number): Float64Array =>
  new Float64Array(Math.ceil(count / ABREAST) * ABREAST * n);

/** Where column q begins among columns of n numbers held abreast; its next entry is ABREAST further. */
export const startAbreast = (q: number, n: number): number => {
  const beside = q % ABREAST;
  return (q - beside) * n + beside;
};

/** Rows solved before the rows below them hear of it; an even number. */
const DEPTH = 256;

// What the inner loop reads and writes are arrays of this module's own, of a fixed size: the compiler knows where they lie
// and how long they are, which of any other it asks anew in every round. It saves two fifths of the time of a whole map.
const PANEL = new Float64Array(TOGETHER * DEPTH);
const PAIR = new Float64Array(2 * DEPTH);
const SUMS = new Float64Array(16);

/**
 * L·Y = B for many right-hand sides, in place: V holds them abreast. Entries before row `from` are 0 and stay it. Panel by
 * panel, as in Goto & van de Geijn (2008): what is fetched serves several products, which is what the time of a map hangs on.
 */
export function solveLowerMany(cholesky: Cholesky, V: Float64Array, from: number): void {
  const { n } = cholesky;
  for (let offset = 0; offset < V.length; offset += TOGETHER * n)
    for (let top = from; top < n; top += DEPTH) solvePanel(cholesky, V, offset, top);
}

/** The rows of one panel, and what they take from the rows below; of the columns together from `offset` on. */
function solvePanel({ n, lower }: Cholesky, V: Float64Array, offset: number, top: number): void {
  const bottom = Math.min(top + DEPTH, n);
  const stop = Math.min(offset + TOGETHER * n, V.length);
  for (let i = top; i < n; i += 2) {
    // Past the last row the last stands in, and is written first.
    const j = Math.min(i + 1, n - 1);
    const inside = i < bottom;
    const depth = Math.min(i, bottom) - top;
    packPair(lower, i * n + top, j * n + top, depth);
    const pivot = inside ? 1 / lower[i * n + i] : 1;
    const link = inside ? lower[j * n + i] : 0;
    const nextPivot = inside ? 1 / lower[j * n + j] : 1;
    let a = (offset + ABREAST * i) | 0;
    let b = (offset + ABREAST * j) | 0;
    for (
      let start = 0;
      a < stop;
      start = (start + ABREAST * DEPTH) | 0, a = (a + ABREAST * n) | 0, b = (b + ABREAST * n) | 0
    ) {
      sumProducts(start, depth);
      const a0 = (V[a] - SUMS[0]) * pivot;
      const a1 = (V[(a + 1) | 0] - SUMS[1]) * pivot;
      const a2 = (V[(a + 2) | 0] - SUMS[2]) * pivot;
      const b0 = (V[b] - SUMS[3] - link * a0) * nextPivot;
      const b1 = (V[(b + 1) | 0] - SUMS[4] - link * a1) * nextPivot;
      const b2 = (V[(b + 2) | 0] - SUMS[5] - link * a2) * nextPivot;
      V[b] = b0;
      V[(b + 1) | 0] = b1;
      V[(b + 2) | 0] = b2;
      V[a] = a0;
      V[(a + 1) | 0] = a1;
      V[(a + 2) | 0] = a2;
      if (!inside) continue;
      const at = (start + ABREAST * depth) | 0;
      PANEL[at] = a0;
      PANEL[(at + 1) | 0] = a1;
      PANEL[(at + 2) | 0] = a2;
      PANEL[(at + 3) | 0] = b0;
      PANEL[(at + 4) | 0] = b1;
      PANEL[(at + 5) | 0] = b2;
    }
  }
}

function packPair(lower: Float64Array, first: number, second: number, depth: number): void {
  for (let k = 0; k < depth; k++) {
    PAIR[2 * k] = lower[first + k];
    PAIR[2 * k + 1] = lower[second + k];
  }
}

/** The pair of rows times three columns of the panel, into SUMS; whole numbers are told to be (| 0), or each is checked. */
function sumProducts(start: number, depth: number): void {
  let a0 = 0;
  let a1 = 0;
  let a2 = 0;
  let b0 = 0;
  let b1 = 0;
  let b2 = 0;
  const end = (2 * depth) | 0;
  for (let k = 0, at = start | 0; k < end; k = (k + 2) | 0, at = (at + 3) | 0) {
    const a = PAIR[k];
    const b = PAIR[(k + 1) | 0];
    const v0 = PANEL[at];
    const v1 = PANEL[(at + 1) | 0];
    const v2 = PANEL[(at + 2) | 0];
    a0 += a * v0;
    a1 += a * v1;
    a2 += a * v2;
    b0 += b * v0;
    b1 += b * v1;
    b2 += b * v2;
  }
  SUMS[0] = a0;
  SUMS[1] = a1;
  SUMS[2] = a2;
  SUMS[3] = b0;
  SUMS[4] = b1;
  SUMS[5] = b2;
}

/**
 * Products of column p of one array of columns abreast with columns q, q + 1 and q + 2 of another, all n long; q begins a
 * group of those that lie abreast.
 */
export function productsAbreast(
  V: Float64Array,
  p: number,
  W: Float64Array,
  q: number,
  n: number,
  products: Float64Array,
): void {
  let s0 = 0;
  let s1 = 0;
  let s2 = 0;
  let at = startAbreast(p, n);
  let to = startAbreast(q, n);
  for (let i = 0; i < n; i++, at += ABREAST, to += ABREAST) {
    const v = V[at];
    s0 += v * W[to];
    s1 += v * W[to + 1];
    s2 += v * W[to + 2];
  }
  products[0] = s0;
  products[1] = s1;
  products[2] = s2;
}
