import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import Papa from 'papaparse';

const path = (name: string) => fileURLToPath(new URL(`../reference/${name}`, import.meta.url));

/** Rows of a table under tests/reference. */
export const referenceTable = <Column extends string>(name: string): Record<Column, number>[] =>
  Papa.parse<Record<Column, number>>(readFileSync(path(name), 'utf8'), {
    header: true,
    dynamicTyping: true,
    skipEmptyLines: true,
  }).data;

/** What gstat computed, by the names that tests/reference/gstat.R gives. */
export const gstat = (name: string): number[] => JSON.parse(readFileSync(path('gstat.json'), 'utf8'))[name];
