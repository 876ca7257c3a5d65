import { textWidth } from './drawing';

/** A table as it is printed. */
export interface Table {
  heads: readonly Head[];
  rows: readonly (readonly string[])[];
}

interface Head {
  text: string;
  /** Numbers stand to the right, words to the left. */
  right?: true;
  /** The column that the table is about. */
  strong?: true;
}

/** Type and the air right of words and of numbers, CSS pixels; ReportTable.svelte has the same. */
const SIZE = { plain: 12.6, small: 12 };
const AIR = { word: 9, number: 17, small: 12 };

/** What a column of words asks for at most: longer words are broken into lines. */
const WIDEST_WORDS = 240;

/** A longer word is broken; a bold one is so much wider. */
const LONGEST_WORD = 110;
const BOLD = 1.08;

/** Between tables that stand abreast, CSS pixels; report.css has the same. */
export const GUTTER = 28;

/** Width that each column asks for, pixels. */
function wishes({ heads, rows }: Table, small: boolean): number[] {
  const size = small ? SIZE.small : SIZE.plain;
  return heads.map(({ text, right }, i) => {
    const widest = Math.max(...[text, ...rows.map((row) => row[i] ?? '')].map((t) => textWidth(t, { size })));
    return right ? widest + (small ? AIR.small : AIR.number) : Math.min(widest, WIDEST_WORDS) + AIR.word;
  });
}

/** Width under which a column of words would break a word that is not longer than others are. */
function leastWidths({ heads, rows }: Table, small: boolean): number[] {
  const size = small ? SIZE.small : SIZE.plain;
  return heads.map(({ text }, i) => {
    const longest = [text, ...rows.map((row) => row[i] ?? '')]
      .flatMap((cell) => cell.split(/[\s\u2009]+/))
      .map((word) => BOLD * textWidth(word, { size }));
    return Math.min(Math.max(...longest), LONGEST_WORD) + AIR.word;
  });
}

const sum = (numbers: readonly number[]): number => numbers.reduce((total, one) => total + one, 0);

/**
 * Share of the width that each column takes, so that the table is exactly as wide as its place: numbers have what they
 * need, words share the rest and are broken into lines; where numbers alone need more, all give way alike.
 */
export function columnShares(table: Table, width: number, small = false): number[] {
  const wanted = wishes(table, small);
  const numbers = sum(wanted.filter((_, i) => table.heads[i]!.right));
  const words = sum(wanted) - numbers;
  if (words + numbers <= width || words === 0 || numbers > 0.8 * width)
    return wanted.map((one) => one / (words + numbers));
  const least = leastWidths(table, small).map((one, i) =>
    table.heads[i]!.right ? 0 : Math.min(one, wanted[i]!),
  );
  const spare = Math.max(0, width - numbers - sum(least)) / (words - sum(least) || 1);
  const taken = wanted.map((one, i) => (table.heads[i]!.right ? one : least[i]! + (one - least[i]!) * spare));
  return taken.map((one) => one / sum(taken));
}

/** How many copies of a long table stand abreast on a page of `width` pixels: 3, 2 or 1. */
export function abreast(table: Table, width: number): 1 | 2 | 3 {
  const wanted = sum(wishes(table, true));
  const fits = (count: number) => count * wanted + (count - 1) * GUTTER <= width;
  return fits(3) ? 3 : fits(2) ? 2 : 1;
}

/** Rows of one column of a block: about a quarter of a page, so that little of a page stays empty where a block is too tall. */
const ROWS = 14;

/**
 * A long table as blocks of columns side by side, each with its heads: a block stays on one page and reads down its
 * columns. Rows are dealt evenly, so that no block is left with one.
 */
export function blocksOf({ heads, rows }: Table, columns: number): Table[][] {
  const blocks = Math.ceil(rows.length / (columns * ROWS));
  const cut = (list: Table['rows'], pieces: number): Table['rows'][] => {
    const each = Math.ceil(list.length / pieces);
    return Array.from({ length: pieces }, (_, i) => list.slice(i * each, (i + 1) * each));
  };
  return cut(rows, blocks).map((block) =>
    cut(block, columns)
      .filter((column) => column.length > 0)
      .map((column) => ({ heads, rows: column })),
  );
}
