import { describe, expect, it } from 'vitest';
import { addOpening } from '../../src/home/edits/add';
import { box, homeWith, room } from '../support/homes';
import { drive } from '../support/driver';

const withDoor = () =>
  homeWith(room(box(0, 0, 4, 3)), addOpening({ room: 'r1', kind: 'door', wall: 2, offset: 0.5, width: 0.8 }));

async function selected() {
  const driver = await drive({ home: withDoor() });
  driver.editor.setStage('sketch');
  driver.click([2, 1.5]);
  expect(driver.editor.selection).toEqual([{ kind: 'room', id: 'r1' }]);
  return driver;
}

describe('a double click on the outline of the selected room', () => {
  it('puts a corner into a wall, walls behind it keep their doors, and one undo takes it back', async () => {
    const { editor, doubleClick } = await selected();
    const before = editor.home;
    doubleClick([1, 0]);
    expect(editor.home.rooms.r1!.outline).toEqual([
      [0, 0],
      [1, 0],
      [4, 0],
      [4, 3],
      [0, 3],
    ]);
    expect(editor.home.openings.o1!.wall).toBe(3);
    editor.undo();
    expect(editor.home).toEqual(before);
  });

  it('takes a corner away that is pressed twice', async () => {
    const { editor, doubleClick } = await selected();
    doubleClick([1, 0]);
    doubleClick([1, 0]);
    expect(editor.home.rooms.r1!.outline).toEqual(box(0, 0, 4, 3));
    expect(editor.home.openings.o1!.wall).toBe(2);
  });

  it('changes nothing in the middle of the room, nor where the plan is only looked at', async () => {
    const { editor, doubleClick } = await selected();
    const before = editor.home;
    doubleClick([2, 1.5]);
    editor.setStage('judge');
    doubleClick([1, 0]);
    expect(editor.home).toBe(before);
  });
});
