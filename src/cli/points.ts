import papa from 'papaparse';
import { pointWords } from '../words/commandLine';
import { isNumber, type AskedPoint } from './options';

const COLUMNS = ['x', 'y', 'level', 'height'];

/** Reads a table of places: columns x, y and, where wanted, level and height, in any order, metres. */
export function parsePoints(
  text: string,
  name: string,
): { ok: true; points: AskedPoint[] } | { ok: false; problems: string[] } {
  const { data, meta, errors } = papa.parse<Record<string, string | undefined>>(text.replace(/^\uFEFF/, ''), {
    header: true,
    skipEmptyLines: 'greedy',
    transformHeader: (header) => header.trim().toLowerCase(),
  });
  const fields = meta.fields ?? [];
  const unknown = fields.filter((field) => !COLUMNS.includes(field));
  if (!fields.includes('x') || !fields.includes('y') || unknown.length > 0) {
    return {
      ok: false,
      problems: [pointWords.badHead(name, fields)],
    };
  }
  const problems = errors
    .filter((error) => error.type !== 'Delimiter')
    .map((error) => pointWords.badRow(name, (error.row ?? 0) + 2, error.message));
  const points = data.map((row, i): AskedPoint => {
    for (const column of ['x', 'y', 'height'] as const) {
      const value = row[column]?.trim() ?? '';
      if (isNumber(value) || (column === 'height' && value === '')) continue;
      problems.push(pointWords.notNumber(name, i + 2, column, value));
    }
    const height = row.height?.trim();
    return {
      x: Number(row.x),
      y: Number(row.y),
      level: row.level?.trim() || null,
      height: height ? Number(height) : null,
    };
  });
  return problems.length > 0 ? { ok: false, problems } : { ok: true, points };
}
