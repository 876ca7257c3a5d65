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

/** How many are marked, by adding neighbours in parallel (Warren 2012, section 5-1). */
export function countMarks(marks: Marks): number {
  let count = 0;
  for (let word of marks) {
    word -= (word >>> 1) & 0x55555555;
    word = (word & 0x33333333) + ((word >>> 2) & 0x33333333);
    count += (((word + (word >>> 4)) & 0x0f0f0f0f) * 0x01010101) >>> 24;
  }
  return count;
}
