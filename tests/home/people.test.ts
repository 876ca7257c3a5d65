import { expect, it } from 'vitest';
import { addPiece } from '../../src/home/edits/add';
import { duplicate } from '../../src/home/edits/duplicate';
import type { Home } from '../../src/home/home';
import { homeWith } from '../support/homes';

const bed = (width: number) => addPiece({ kind: 'bed', at: [1, 1], size: [width, 2] });
const people = (home: Home) => Object.values(home.pieces).map(({ uses }) => uses.map(({ who }) => who));

it('a bed for two is for two, one on either side; a narrow one for one in its middle', () => {
  const { p1, p2 } = homeWith(bed(1.4), bed(0.9)).pieces;
  expect(p1!.uses.map(({ who, side }) => [who, side])).toEqual([
    ['person 1', 'left'],
    ['person 2', 'right'],
  ]);
  expect(p2!.uses).toEqual([{ who: 'person 3', side: 'middle', hours: 8 }]);
});

it('a second bed, a cot and a copy of a bed are other people’s; the desk is who was first’s', () => {
  const home = homeWith(
    bed(0.9),
    bed(0.9),
    addPiece({ kind: 'cot', at: [3, 1] }),
    addPiece({ kind: 'desk', at: [4, 1] }),
    duplicate([{ kind: 'piece', id: 'p1' }]),
  );
  expect(people(home)).toEqual([['person 1'], ['person 2'], ['person 3'], ['person 1'], ['person 4']]);
});

it('people who are said are kept, by any name, and nobody is given theirs', () => {
  const uses = [{ who: 'person 1', side: 'middle' as const, hours: 7 }];
  expect(people(homeWith(addPiece({ kind: 'bed', uses }), bed(0.9)))).toEqual([['person 1'], ['person 2']]);
  expect(homeWith(addPiece({ kind: 'seat' })).pieces.p1!.uses).toEqual([]);
});
