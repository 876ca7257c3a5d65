import { describe, expect, it } from 'vitest';
import { parsePoints } from '../../src/cli/points';

describe('a table of points', () => {
  it('is read by its column names', () => {
    expect(parsePoints('\uFEFFx,y,level,height\n1,2,l1,0.6\n-1.5,2,,\n\n', 'p.csv')).toEqual({
      ok: true,
      points: [
        { x: 1, y: 2, level: 'l1', height: 0.6 },
        { x: -1.5, y: 2, level: null, height: null },
      ],
    });
    expect(parsePoints('Y;X\r\n2;1\r\n', 'p.csv')).toEqual({
      ok: true,
      points: [{ x: 1, y: 2, level: null, height: null }],
    });
  });

  it('says which row and column cannot be read, and the value there', () => {
    const parsed = parsePoints('x,y\n1,2\n1,two\n', 'p.csv');
    expect(parsed).toMatchObject({ ok: false });
    expect(parsed.ok ? '' : parsed.problems).toEqual([
      '--points p.csv, row 3, y “two”: not a number. Write metres with a decimal point, like 2.5.',
    ]);
  });

  it('says so where a column is missing, unknown, or a row is short', () => {
    for (const text of ['1,2\n', 'x,z\n1,2', '', 'x,y\n1\n']) {
      expect(parsePoints(text, 'p.csv').ok).toBe(false);
    }
  });
});
