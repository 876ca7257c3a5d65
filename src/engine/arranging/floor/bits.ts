/** Yes or no for each cell of a grid, 32 cells a word, each row beginning a new word. */
export interface Bits {
  nx: number;
  ny: number;
  /** Words a row. */
  words: number;
  row: Uint32Array;
  /** Rows from `low` up to `high`, itself left out, may hold a cell; all others hold none. */
  low: number;
  high: number;
}

export function noBits(nx: number, ny: number): Bits {
  const words = (nx + 31) >> 5;
  return { nx, ny, words, row: new Uint32Array(words * ny), low: ny, high: 0 };
}

export const copyOf = (bits: Bits): Bits => ({ ...bits, row: bits.row.slice() });

/** Makes one hold the cells of another. */
export function copyTo(bits: Bits, from: Bits): void {
  bits.row.set(from.row);
  bits.low = from.low;
  bits.high = from.high;
}

/** Takes all cells out. */
export function clear(bits: Bits): void {
  bits.row.fill(0);
  bits.low = bits.ny;
  bits.high = 0;
}

/** Sets cells i0 … i1 of row j; those beyond the grid are left out. */
export function setRun(bits: Bits, j: number, i0: number, i1: number): void {
  const { nx, ny, words, row } = bits;
  if (j < 0 || j >= ny) return;
  const from = Math.max(0, i0);
  const to = Math.min(nx - 1, i1);
  if (from > to) return;
  bits.low = Math.min(bits.low, j);
  bits.high = Math.max(bits.high, j + 1);
  const [first, last] = [from >> 5, to >> 5];
  for (let w = first; w <= last; w++) {
    const low = w === first ? -1 << (from & 31) : -1;
    const high = w === last ? -1 >>> (31 - (to & 31)) : -1;
    row[j * words + w] |= low & high;
  }
}

/** Takes the cells of `gone` out of `bits`. */
export function take(bits: Bits, gone: Bits): void {
  const end = gone.high * gone.words;
  for (let k = gone.low * gone.words; k < end; k++) bits.row[k] &= ~gone.row[k];
}

/** Puts the cells of `more` into `bits`. */
export function put(bits: Bits, more: Bits): void {
  bits.low = Math.min(bits.low, more.low);
  bits.high = Math.max(bits.high, more.high);
  for (let k = more.low * more.words; k < more.high * more.words; k++) bits.row[k] |= more.row[k];
}

/** Whether the two share a cell. */
export function meet(a: Bits, b: Bits): boolean {
  const end = Math.min(a.high, b.high) * a.words;
  for (let k = Math.max(a.low, b.low) * a.words; k < end; k++) if ((a.row[k] & b.row[k]) !== 0) return true;
  return false;
}

/**
 * All cells of `open` that can be come to from `seeds` over sides and corners of cells of `open`, and those `found` from
 * other seeds before. A word at a time: runs fill by doubling steps (Kogge & Stone 1973, carries of an adder), then spread
 * to the rows beside, as long as these change.
 */
export function flood(open: Bits, seeds: Bits, found = noBits(open.nx, open.ny)): Bits {
  const { words, ny } = open;
  const { row } = found;
  const due: number[] = [];
  for (let j = seeds.low; j < seeds.high; j++) {
    let any = 0;
    for (let k = j * words; k < (j + 1) * words; k++) {
      const fresh = seeds.row[k] & open.row[k] & ~row[k];
      row[k] |= fresh;
      any |= fresh;
    }
    if (any === 0) continue;
    fillRow(row, open.row, j * words, words);
    due.push(j);
  }
  for (let j = due.pop(); j !== undefined; j = due.pop()) {
    if (j > 0 && spread(row, open.row, (j - 1) * words, j * words, words)) due.push(j - 1);
    if (j + 1 < ny && spread(row, open.row, (j + 1) * words, j * words, words)) due.push(j + 1);
  }
  found.low = open.low;
  found.high = open.high;
  return found;
}

/** Cells of a row that touch found cells of another; whether there are new ones. */
function spread(row: Uint32Array, open: Uint32Array, own: number, other: number, words: number): boolean {
  let changed = false;
  for (let w = 0; w < words; w++) {
    const here = row[other + w];
    const before = w > 0 ? row[other + w - 1] >>> 31 : 0;
    const after = w + 1 < words ? row[other + w + 1] << 31 : 0;
    const fresh = (here | (here << 1) | (here >>> 1) | before | after) & open[own + w] & ~row[own + w];
    if (fresh === 0) continue;
    row[own + w] |= fresh;
    changed = true;
  }
  if (changed) fillRow(row, open, own, words);
  return changed;
}

function fillRow(row: Uint32Array, open: Uint32Array, own: number, words: number): void {
  for (let w = 0; w < words; w++) {
    const carry = w > 0 ? (row[own + w - 1] >>> 31) & open[own + w] : 0;
    let found = row[own + w] | carry;
    let run = open[own + w];
    found |= run & (found << 1);
    run &= run << 1;
    found |= run & (found << 2);
    run &= run << 2;
    found |= run & (found << 4);
    run &= run << 4;
    found |= run & (found << 8);
    run &= run << 8;
    row[own + w] = found | (run & (found << 16));
  }
  for (let w = words - 1; w >= 0; w--) {
    const carry = w + 1 < words ? (row[own + w + 1] << 31) & open[own + w] : 0;
    let found = row[own + w] | carry;
    let run = open[own + w];
    found |= run & (found >>> 1);
    run &= run >>> 1;
    found |= run & (found >>> 2);
    run &= run >>> 2;
    found |= run & (found >>> 4);
    run &= run >>> 4;
    found |= run & (found >>> 8);
    run &= run >>> 8;
    row[own + w] = found | (run & (found >>> 16));
  }
}
