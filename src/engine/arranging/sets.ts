/** Sets of candidates as bits, by their number in order of cost. */
export type Marks = Uint32Array;

export const noMarks = (count: number): Marks => new Uint32Array((count + 31) >> 5);

export const mark = (marks: Marks, i: number): void => void (marks[i >> 5] |= 1 << (i & 31));

export const unmark = (marks: Marks, i: number): void => void (marks[i >> 5] &= ~(1 << (i & 31)));

export const isMarked = (marks: Marks, i: number): boolean => (marks[i >> 5] & (1 << (i & 31))) !== 0;

export function both(a: Marks, b: Marks): Marks {
  const shared = new Uint32Array(a.length);
  for (let i = 0; i < a.length; i++) shared[i] = a[i] & b[i];
  return shared;
}

/** Writes what two sets share into `shared`, and counts it. */
export function narrow(a: Marks, b: Marks, shared: Marks): number {
  let count = 0;
  for (let i = 0; i < a.length; i++) {
    const word = a[i] & b[i];
    shared[i] = word;
    if (word !== 0) count += countBits(word);
  }
  return count;
}

/** The first marked number at or after `from`; −1 for none. */
export function nextMark(marks: Marks, from: number): number {
  let word = from >> 5;
  if (word >= marks.length) return -1;
  let value = marks[word] & (-1 << (from & 31));
  while (value === 0) {
    if (++word >= marks.length) return -1;
    value = marks[word];
  }
  return (word << 5) + 31 - Math.clz32(value & -value);
}

export function countMarks(marks: Marks): number {
  let count = 0;
  for (const word of marks) count += countBits(word);
  return count;
}

/** How many bits of a word are set, by adding neighbours in parallel (Warren 2012, section 5-1). */
function countBits(word: number): number {
  const pairs = word - ((word >>> 1) & 0x55555555);
  const fours = (pairs & 0x33333333) + ((pairs >>> 2) & 0x33333333);
  return Math.imul((fours + (fours >>> 4)) & 0x0f0f0f0f, 0x01010101) >>> 24;
}
