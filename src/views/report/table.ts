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

/** One long table as blocks of columns side by side, so that a page is filled before the next begins. */
export type Block = readonly Table[];

/** Height of a row of a table with its line, and of a head, CSS pixels; report.css has the same. */
export const ROW = 18;
export const HEAD = 22;

/**
 * Rows laid in `columns` side by side: as many as fit `firstHeight` pixels (none where that is not worth a start), then
 * pages of `pageHeight`. Each block reads down its columns.
 */
export function blocksOf(table: Table, columns: number, firstHeight: number, pageHeight: number): Block[] {
  const rowsIn = (height: number) => Math.floor((height - HEAD) / ROW);
  const blocks: Block[] = [];
  let rest = table.rows;
  let fits = rowsIn(firstHeight);
  if (fits < LEAST_ROWS) fits = rowsIn(pageHeight);
  while (rest.length > 0) {
    const each = Math.min(fits, Math.ceil(rest.length / columns));
    const block: Table[] = [];
    for (let column = 0; column < columns && rest.length > 0; column++) {
      block.push({ heads: table.heads, rows: rest.slice(0, each) });
      rest = rest.slice(each);
    }
    blocks.push(block);
    fits = rowsIn(pageHeight);
  }
  return blocks;
}

const LEAST_ROWS = 4;
