import { expect, it } from 'vitest';
import { addFixture, addPiece } from '../../src/home/edits/add';
import type { PlacedPiece } from '../../src/engine/arranging/arrange';
import { keptSentence } from '../../src/words/keptRules';
import { box, homeWith, room } from '../support/homes';

const answer = (...kinds: string[]) => ({
  pieces: [{ breaks: kinds.map((kind) => ({ kind, with: null })) } as unknown as PlacedPiece],
});
const bare = homeWith(room(box(0, 0, 5, 4)));
const furnished = homeWith(
  room(box(0, 0, 5, 4)),
  addFixture({ kind: 'wardrobe', level: 'l1', outline: box(0, 3.4, 1, 4) }),
  addFixture({ kind: 'radiator', level: 'l1', outline: box(4.9, 1, 5, 2) }),
  addPiece({ kind: 'cot', level: 'l1', at: [3, 2], uses: [] }),
);

it('what is kept clear is what the home has and the answer keeps', () => {
  expect(keptSentence(bare, answer())).toBe('Kept clear: the strips beside beds, door swings and landings.');
  expect(keptSentence(furnished, answer())).toBe(
    'Kept clear: the strips beside beds, door swings, landings, the front of wardrobes and the floor beside radiators. A cot keeps away from windows and radiators, always.',
  );
});

it('fault: the front of wardrobes was called kept clear under a row that broke it', () => {
  const said = keptSentence(furnished, answer('wardrobe-front', 'head-under-window'));
  expect(said).toMatch(/^Kept clear: [^.]*radiators\. /);
  expect(said).toContain(
    'Kept where it can be, and not everywhere here: the front of wardrobes and no head under a window.',
  );
});
