import { expect, test } from 'vitest';
import { addPiece } from '../../src/home/edits/add';
import { change } from '../../src/home/edits/change';
import { parseHome } from '../../src/home/file/parse';
import { serialiseHome } from '../../src/home/file/serialise';
import { box, homeWith, room } from '../support/homes';

const sleepers = [
  { who: 'A', side: 'left', hours: 8 },
  { who: 'B', side: 'right', hours: 8 },
];
const bedOf = (uses: object[], more: object = {}) =>
  addPiece({ kind: 'bed', level: 'l1', at: [2, 2], size: [1.4, 2], uses, ...more } as never);

test('a bed that two sleep in keeps both sides free by default, whatever its width', () => {
  const { p1, p2, p3 } = homeWith(
    room(box(0, 0, 8, 8)),
    bedOf(sleepers),
    bedOf([sleepers[0]!]),
    bedOf(sleepers, { access: { left: 0.75, right: 0, foot: 0 } }),
  ).pieces;
  expect([p1!.access.left, p1!.access.right]).toEqual([0.75, 0.75]);
  expect([p2!.access.left, p2!.access.right]).toEqual([0.75, 0]);
  // What somebody said of a side stands.
  expect(p3!.access).toEqual({ left: 0.75, right: 0, foot: 0 });
});

test('a second sleeper on a side without access gets 0.75 m there, and other sides stay as they are', () => {
  const home = homeWith(
    room(box(0, 0, 8, 8)),
    bedOf([sleepers[0]!], { access: { left: 0.6, right: 0, foot: 0.3 } }),
    change({ kind: 'piece', id: 'p1' }, { uses: sleepers }),
  );
  expect(home.pieces.p1!.access).toEqual({ left: 0.6, right: 0.75, foot: 0.3 });
  const read = parseHome(serialiseHome(home));
  expect(read.ok && read.home.pieces.p1!.access).toEqual(home.pieces.p1!.access);
});
