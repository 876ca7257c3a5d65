import { describe, expect, it } from 'vitest';
import { addOpening } from '../../src/home/edits/add';
import { addPiece } from '../../src/home/edits/add';
import { box, homeWith, room } from '../support/homes';
import { drive } from '../support/driver';

/** A bedroom with a door that opens into it, a bed at the far wall and a chest. */
const furnished = () =>
  homeWith(
    room(box(0, 0, 5, 4)),
    addOpening({ room: 'r1', kind: 'door', wall: 0, offset: 0.3, width: 0.8 }),
    addPiece({
      kind: 'bed',
      name: 'Bed',
      level: 'l1',
      at: [2.5, 3],
      size: [0.9, 2],
      uses: [{ who: 'A', hours: 8 }],
    }),
    addPiece({ kind: 'other', name: 'Chest', level: 'l1', at: [4.7, 0.3], size: [0.6, 0.6] }),
  );

async function arranging() {
  const driver = await drive({ home: furnished() });
  driver.editor.setStage('arrange');
  return driver;
}

describe('the rules that furniture breaks', () => {
  it('are none where it stands well, and named by piece where it does not', async () => {
    const { editor, drag } = await arranging();
    expect(editor.broken).toEqual({});
    drag([
      [2.5, 3],
      [1.5, 2],
      [0.8, 1.1],
    ]);
    expect(editor.broken.p1!.map(({ kind }) => kind)).toEqual(
      expect.arrayContaining(['in-door-swing', 'before-door']),
    );
    expect(editor.broken.p2).toBeUndefined();
  });

  it('follow the piece in the hand, and stay with it when it is let go', async () => {
    const { editor, drag, hover, lift } = await arranging();
    drag(
      [
        [2.5, 3],
        [1.5, 2],
        [0.8, 1.1],
      ],
      { hold: true },
    );
    expect(editor.atHand!.broken.map(({ kind }) => kind)).toContain('in-door-swing');
    hover([2.5, 3]);
    expect(editor.atHand!.broken).toEqual([]);
    expect(editor.broken).toEqual({});
    hover([0.8, 1.1]);
    lift([0.8, 1.1]);
    expect(editor.broken.p1!.length).toBeGreaterThan(0);
    editor.undo();
    expect(editor.broken).toEqual({});
  });

  it('are told of every piece that another one comes too near to, once that is let go', async () => {
    const { editor, drag } = await arranging();
    drag([
      [2.5, 3],
      [3.5, 2],
      [4.5, 1],
    ]);
    expect(Object.keys(editor.broken)).toEqual(['p1', 'p2']);
    expect(editor.broken.p2).toContainEqual({ kind: 'overlap', with: 'p1' });
  });

  it('are drawn for the piece at hand only, where furniture is arranged', async () => {
    const { editor, click } = await arranging();
    expect(editor.atHand).toBeNull();
    click([2.5, 2.5]);
    const { id, shapes } = editor.atHand!;
    expect(id).toBe('p1');
    expect(shapes!.strips.length).toBeGreaterThan(0);
    expect(shapes!.landings).toHaveLength(1);
    expect(shapes!.routes.length).toBeGreaterThan(0);
    editor.setStage('judge');
    expect([editor.atHand, editor.broken]).toEqual([null, {}]);
  });
});
