import { expect, test } from 'vitest';
import { addPiece } from '../../src/home/edits/add';
import { takePlaces } from '../../src/home/edits/takePlaces';
import { parseHome } from '../../src/home/file/parse';
import { serialiseHome } from '../../src/home/file/serialise';
import { asFound, homeAsFound } from '../../src/home/questions/asFound';
import { assessQuestion } from '../../src/home/questions/assessQuestion';
import { tryEdit } from '../../src/editor/store';
import type { Edit } from '../../src/home/edits/edit';
import type { Home } from '../../src/home/home';
import { bedroom } from '../support/homes';

const after = (home: Home, edit: Edit): Home => {
  const tried = tryEdit(home, edit);
  if ('problem' in tried) throw new Error(JSON.stringify(tried.problem));
  return tried.change.home;
};
const to = (x: number) => takePlaces([{ id: 'p1', level: 'l1', at: [x, 3], angle: 0 }]);

test('taking keeps what stood before, once, and the file holds it', () => {
  const home = bedroom();
  const once = after(home, to(4));
  const twice = after(once, to(3));
  expect(Object.keys(twice.arrangements)).toHaveLength(1);
  expect(asFound(twice)!.pieces).toEqual([{ id: 'p1', level: 'l1', at: home.pieces.p1!.at, angle: 0 }]);
  const read = parseHome(serialiseHome(twice));
  expect(read.ok && asFound(read.home)).toEqual(asFound(twice));
  expect(homeAsFound(twice).pieces).toEqual(home.pieces);
});

test('the engine is asked for a comparison only where something has moved', () => {
  const home = bedroom();
  expect(assessQuestion(home).moved).toBeUndefined();
  const moved = after(home, to(4));
  expect(assessQuestion(moved).moved).toMatchObject({ found: asFound(moved)!.pieces });
  expect(assessQuestion(after(moved, to(1))).moved).toBeUndefined();
});

test('pieces that came later stand where they do', () => {
  const late = after(after(bedroom(), to(4)), addPiece({ kind: 'desk', level: 'l1', at: [3, 0.5] }));
  expect(homeAsFound(late).pieces.p2).toEqual(late.pieces.p2);
  expect(homeAsFound(late).pieces.p1!.at).toEqual(bedroom().pieces.p1!.at);
});

test('nothing to take leaves no trace', () => {
  expect(Object.keys(after(bedroom(), takePlaces([])).arrangements)).toHaveLength(0);
});
