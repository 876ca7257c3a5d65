/** Yes or no for each cell of a grid, 32 cells a word, each row beginning a new word. */
export interface Bits {
  nx: number;
  ny: number;
  /** Words a row. */
  words: number;
  row: Uint32Array;
}

export function noBits(nx: number, ny: number): Bits {
  const words = (nx + 31) >> 5;
  return { nx, ny, words, row: new Uint32Array(words * ny) };
}

export const copyOf = (bits: Bits): Bits => ({ ...bits, row: bits.row.slice() });

/** Sets cells i0 … i1 of row j; those beyond the grid are left out. */
export function setRun({ nx, ny, words, row }: Bits, j: number, i0: number, i1: number): void {
  if (j < 0 || j >= ny) return;
  const from = Math.max(0, i0);
  const to = Math.min(nx - 1, i1);
  if (from > to) return;
  const [first, last] = [from >> 5, to >> 5];
  for (let w = first; w <= last; w++) {
    const low = w === first ? -1 << (from & 31) : -1;
    const high = w === last ? -1 >>> (31 - (to & 31)) : -1;
    row[j * words + w] |= low & high;
  }
}

/** Takes the cells of `gone` out of `bits`. */
export function take(bits: Bits, gone: Bits): void {
  for (let k = 0; k < bits.row.length; k++) bits.row[k] &= ~gone.row[k];
}

/** Whether the two share a cell. */
export function meet(a: Bits, b: Bits): boolean {
  for (let k = 0; k < a.row.length; k++) if ((a.row[k] & b.row[k]) !== 0) return true;
  return false;
}

/**
 * All cells of `open` that can be come to from `seeds` over sides and corners of cells of `open`. Row by row, a word at a
 * time: runs fill by doubling steps (Kogge & Stone 1973, carries of an adder), then spread to the next row, down and up
 * until nothing changes.
 */
export function flood(open: Bits, seeds: Bits): Bits {
  const found = copyOf(open);
  const { words, ny, row } = found;
  for (let k = 0; k < row.length; k++) row[k] &= seeds.row[k];
  for (let j = 0; j < ny; j++) fillRow(row, open.row, j * words, words);
  for (let changed = true; changed;) {
    changed = false;
    for (let j = 1; j < ny; j++) if (spread(row, open.row, j * words, (j - 1) * words, words)) changed = true;
    for (let j = ny - 2; j >= 0; j--)
      if (spread(row, open.row, j * words, (j + 1) * words, words)) changed = true;
  }
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
