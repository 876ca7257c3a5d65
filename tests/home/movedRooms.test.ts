import { describe, expect, it } from 'vitest';
import { addFixture, addOpening, addPiece, addReading, addSource } from '../../src/home/edits/add';
import { moveBy } from '../../src/home/edits/moveBy';
import { rotate } from '../../src/home/edits/rotate';
import { tryEdit } from '../../src/editor/store';
import type { Edit } from '../../src/home/edits/edit';
import type { Home, Ref } from '../../src/home/home';
import { box, homeWith, room } from '../support/homes';
import { drive } from '../support/driver';

/** Two rooms in a garden: a bed, a radiator, a clock and a reading in the first, one reading in each of the others. */
const furnished = (): Home =>
  homeWith(
    room(box(0, 0, 4, 3)),
    room(box(4, 0, 7, 3), 'living'),
    room(box(-5, -5, 12, 8), 'grounds'),
    addOpening({ room: 'r1', kind: 'door', wall: 0, offset: 1, width: 0.8 }),
    addPiece({ kind: 'bed', name: 'Bed', level: 'l1', at: [1, 2], size: [1.4, 2] }),
    addFixture({ level: 'l1', kind: 'radiator', outline: box(1, 0, 2, 0.1) }),
    addSource({ level: 'l1', kind: 'point', name: 'Clock', path: [[0.3, 2.8]] }),
    addSource({
      level: 'l1',
      kind: 'line',
      name: 'Street',
      path: [
        [-9, 1],
        [3, 1],
      ],
    }),
    addReading({ level: 'l1', at: [2, 1.5], value: 0.1 }),
    addReading({ level: 'l1', at: [5, 1.5], value: 0.2 }),
    addReading({ level: 'l1', at: [-2, -2], value: 0.3 }),
    addReading({ level: 'l1', at: [40, 40], value: 0.4 }),
  );

const after = (home: Home, edit: Edit): Home => {
  const tried = tryEdit(home, edit);
  if ('problem' in tried) throw new Error(JSON.stringify(tried.problem));
  return tried.change.home;
};
const R1: Ref = { kind: 'room', id: 'r1' };
const R2: Ref = { kind: 'room', id: 'r2' };
const readings = (home: Home) => Object.values(home.readings).map(({ at }) => at);

describe('a room that is moved takes along what stands in it', () => {
  it('pieces, fixtures, sources and readings in it go once each; what stands elsewhere stays', () => {
    const home = after(
      furnished(),
      moveBy([R1, { kind: 'piece', id: 'p1' }, { kind: 'reading', id: 'm1' }], [0, 1]),
    );
    expect(home.rooms.r1!.outline).toEqual(box(0, 1, 4, 4));
    expect(home.pieces.p1!.at).toEqual([1, 3]);
    expect(home.fixtures.f1!.outline).toEqual(box(1, 1, 2, 1.1));
    expect(home.sources.s1!.path).toEqual([[0.3, 3.8]]);
    expect(home.sources.s2!.path).toEqual([
      [-9, 1],
      [3, 1],
    ]);
    expect(home.openings.o1).toMatchObject({ wall: 0, offset: 1 });
    expect(readings(home)).toEqual([
      [2, 2.5],
      [5, 1.5],
      [-2, -2],
      [40, 40],
    ]);
  });

  it('several rooms take along what stands in each of them, the grounds only what no room of them holds', () => {
    expect(readings(after(furnished(), moveBy([R1, R2], [1, 0])))).toEqual([
      [3, 1.5],
      [6, 1.5],
      [-2, -2],
      [40, 40],
    ]);
    expect(readings(after(furnished(), moveBy([{ kind: 'room', id: 'r3' }], [1, 0])))).toEqual([
      [2, 1.5],
      [5, 1.5],
      [-1, -2],
      [40, 40],
    ]);
  });

  it('turned a quarter, the room keeps everything at its place in it', () => {
    const home = after(furnished(), rotate([R1], 90));
    expect(home.rooms.r1!.outline[0]).toEqual([3.5, -0.5]);
    expect(home.pieces.p1).toMatchObject({ at: [1.5, 0.5], angle: 90 });
    expect(readings(home).slice(0, 2)).toEqual([
      [2, 1.5],
      [5, 1.5],
    ]);
  });

  it('by drag and by arrows it is one step each', async () => {
    const { editor, click, drag, key } = await drive({ home: furnished() });
    click([3.5, 2.5]);
    expect(editor.selection).toEqual([R1]);
    drag(
      [
        [3.5, 2.5],
        [3.5, 4],
        [3.5, 6.5],
      ],
      { alt: true },
    );
    expect(editor.home.rooms.r1!.outline[0]).toEqual([0, 4]);
    expect(editor.home.pieces.p1!.at).toEqual([1, 6]);
    expect(readings(editor.home)[0]).toEqual([2, 5.5]);
    key('ArrowUp');
    expect(readings(editor.home)[0]).toEqual([2, 5.55]);
    editor.undo();
    expect(readings(editor.home)[0]).toEqual([2, 5.5]);
    editor.undo();
    expect(readings(editor.home)[0]).toEqual([2, 1.5]);
    expect(editor.home.pieces.p1!.at).toEqual([1, 2]);
    expect(editor.canUndo).toBe(false);
  });
});
