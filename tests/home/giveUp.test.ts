import { expect, it } from 'vitest';
import { giveUp } from '../../src/home/edits/giveUp';
import { parseHome } from '../../src/home/file/parse';
import { serialiseHome } from '../../src/home/file/serialise';
import { tryEdit } from '../../src/editor/store';
import { bedroom } from '../support/homes';

it('asks for less of strips, landings, ways and desks, and leaves all else; the file holds it', () => {
  const home = bedroom();
  const given = tryEdit(
    home,
    giveUp([
      { kind: 'strip', piece: 'p1', side: 'left', from: 0.75, to: 0.45 },
      { kind: 'landing', from: 0.6, to: 0.3 },
      { kind: 'path', from: 0.6, to: 0.5 },
      { kind: 'desk-sideways' },
    ]),
  );
  if ('problem' in given) throw new Error(given.problem.kind);
  const { home: less } = given.change;
  const { access } = home.pieces.p1!;
  expect(less.pieces.p1!.access).toEqual({ ...access, left: 0.45 });
  expect(less.settings.rules).toEqual({
    ...home.settings.rules,
    landing: 0.3,
    path: 0.5,
    deskSideways: true,
  });
  expect({ ...less, pieces: null, settings: null }).toEqual({ ...home, pieces: null, settings: null });
  expect(parseHome(serialiseHome(less))).toMatchObject({ ok: true, home: less });
});

it('asks for nothing less where nothing is given up, and says so where a piece is gone', () => {
  const home = bedroom();
  expect(tryEdit(home, giveUp([]))).toMatchObject({ change: { home } });
  const gone = giveUp([{ kind: 'strip', piece: 'p9', side: 'foot', from: 0.75, to: 0.6 }]);
  expect(tryEdit(home, gone)).toEqual({ problem: { kind: 'not-there', collection: 'pieces', id: 'p9' } });
});
