import { describe, expect, it } from 'vitest';
import { addPiece, addReading } from '../../src/home/edits/add';
import { openPlan, usesChangedBy } from '../../src/home/questions/openPlan';
import { asFound } from '../../src/home/questions/asFound';
import { usesSentence } from '../../src/words/whatIf';
import { box, homeWith, room } from '../support/homes';
import { drive } from '../support/driver';

/** A bedroom beside what makes field, a sitting room far from it, a bathroom farther still. */
const threeRooms = () =>
  homeWith(
    room(box(0, 0, 4, 4)),
    room(box(4.1, 0, 8, 4), 'living'),
    room(box(8.1, 0, 12, 4), 'wet'),
    addPiece({
      kind: 'bed',
      name: 'Bed',
      level: 'l1',
      at: [1, 3],
      size: [0.9, 2],
      uses: [{ who: 'A', hours: 8 }],
    }),
    ...[0, 1, 2, 3, 4, 5, 6, 7].flatMap((i) =>
      [0, 1, 2].map((j) => {
        const [x, y] = [0.5 + 1.5 * i, 0.5 + 1.5 * j];
        return addReading({ level: 'l1', at: [x, y], value: Number((0.4 / (x + 0.5)).toFixed(3)) });
      }),
    ),
  );

describe('an open plan of rooms by use', () => {
  it('lets living rooms and rooms to work in be slept in, and no others', () => {
    const home = openPlan(threeRooms());
    expect(Object.values(home.rooms).map(({ use }) => use)).toEqual(['sleeping', 'sleeping', 'wet']);
  });

  it('is asked for, gives the room, and taken changes its use in the same step; one undo brings both back', async () => {
    const { editor, settle, planner } = await drive({ home: threeRooms() });
    settle();
    editor.arranging.ask();
    planner.work();
    const room = () => editor.arranging.state.proposal!.pieces[0]!.room;
    expect(room()).toBe('r1');
    editor.arranging.ask({ open: true });
    planner.work();
    expect(room()).toBe('r2');
    const { proposal } = editor.arranging.state;
    expect(usesSentence(editor.home, usesChangedBy(editor.home, proposal!.pieces))).toBe(
      'Room 2 becomes a room to sleep in.',
    );
    expect(editor.arranging.take()).toBeNull();
    expect(editor.home.rooms.r2!.use).toBe('sleeping');
    expect(asFound(editor.home)!.rooms).toContainEqual({ id: 'r2', use: 'living' });
    editor.undo();
    expect(editor.home).toEqual(threeRooms());
  });

  it('does not call the room wrong while the bed is shown there', async () => {
    const { editor, settle, planner } = await drive({ home: threeRooms() });
    settle();
    editor.setStage('arrange');
    editor.arranging.ask({ open: true });
    planner.work();
    editor.select([{ kind: 'piece', id: 'p1' }]);
    expect(editor.atHand).toMatchObject({ id: 'p1', broken: [] });
  });
});
