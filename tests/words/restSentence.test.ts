import { expect, it } from 'vitest';
import { change } from '../../src/home/edits/change';
import { addPiece } from '../../src/home/edits/add';
import { arrange, restSentence } from '../../src/words/arrange';
import { box, homeWith, room } from '../support/homes';

const bed = addPiece({ kind: 'bed', level: 'l1', at: [1, 3], uses: [{ who: 'A', hours: 8 }] });
const withPiece = (fields: { locked?: boolean; uses?: [] }) =>
  homeWith(room(box(0, 0, 5, 4)), bed, change({ kind: 'piece', id: 'p1' }, fields));

it('fault: places were said to be tried where every piece is to stay, or nobody uses one', () => {
  expect(restSentence(withPiece({}))).toBe('');
  expect(restSentence(withPiece({ locked: true }))).toBe(arrange.allStay);
  expect(restSentence(withPiece({ uses: [] }))).toBe(arrange.nobodyUses);
});

it('a map says how many readings it takes', () => {
  expect(arrange.mapTakes(3, 0)).toBe('There is no map to arrange on yet. It takes 3 readings.');
  expect(arrange.mapTakes(3, 1)).toBe(
    'There is no map to arrange on yet. It takes 3 readings; this round has 1.',
  );
});
