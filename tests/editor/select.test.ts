import { describe, expect, it } from 'vitest';
import { addPiece } from '../../src/home/edits/add';
import { bedroom, box, homeWith, room } from '../support/homes';
import { drive } from '../support/driver';

const twoBeds = () =>
  homeWith(
    room(box(0, 0, 6, 5)),
    addPiece({ kind: 'bed', level: 'l1', at: [1.5, 2], size: [1, 2] }),
    addPiece({ kind: 'bed', level: 'l1', at: [4, 2], size: [1, 2] }),
  );

const P1 = { kind: 'piece', id: 'p1' } as const;
const P2 = { kind: 'piece', id: 'p2' } as const;

describe('selecting', () => {
  it('a click picks the thing on top, shift adds and takes away, empty paper lets go', async () => {
    const { editor, click } = await drive({ home: twoBeds() });
    click([1.5, 2]);
    expect(editor.selection).toEqual([P1]);
    click([4, 2], { shift: true });
    expect(editor.selection).toEqual([P1, P2]);
    click([1.5, 2], { shift: true });
    expect(editor.selection).toEqual([P2]);
    click([0.3, 0.3]);
    expect(editor.selection).toEqual([{ kind: 'room', id: 'r1' }]);
    click([6.9, 2]);
    expect(editor.selection).toEqual([]);
  });

  it('a lasso from inside a room catches what lies wholly in it and moves nothing', async () => {
    const { editor, drag } = await drive({ home: twoBeds() });
    const before = editor.home;
    drag([
      [0.5, 0.5],
      [2, 2],
      [2.5, 3.5],
    ]);
    expect(editor.selection).toEqual([P1]);
    expect(editor.home).toBe(before);
    drag(
      [
        [3, 0.5],
        [5, 3.5],
      ],
      { shift: true },
    );
    expect(editor.selection).toEqual([P1, P2]);
  });

  it('things nearer than 22 px answer a finger, 6 px a mouse', async () => {
    const { editor, click } = await drive({ home: bedroom() });
    editor.setStage('survey');
    click([0.5 + 0.15, 0.5]);
    expect(editor.selection).toEqual([]);
    click([0.5 + 0.15, 0.5], { type: 'touch' });
    expect(editor.selection).toEqual([{ kind: 'reading', id: 'm1' }]);
  });

  it('forgets what undo took away', async () => {
    const { editor, key } = await drive({ home: twoBeds() });
    editor.select([P1]);
    key('d', { command: true });
    expect(editor.selection).toEqual([{ kind: 'piece', id: 'p3' }]);
    editor.undo();
    expect(editor.selection).toEqual([]);
  });
});

describe('stages', () => {
  it('fault: a reading that is not shown stood in the way of the bed over it', async () => {
    const { editor, click } = await drive({ home: bedroom() });
    click([0.5, 3.5]);
    expect(editor.selection).toEqual([P1]);
    editor.setStage('map');
    click([0.5, 3.5]);
    expect(editor.selection).toEqual([{ kind: 'reading', id: 'm3' }]);
  });

  it('a plan that is looked at does not shift under the hand: the drag moves the paper', async () => {
    const { editor, drag } = await drive({ home: bedroom() });
    for (const [stage, moves] of [
      ['sketch', true],
      ['survey', false],
      ['map', false],
      ['judge', false],
      ['arrange', true],
    ] as const) {
      editor.setStage(stage);
      const before = editor.home.pieces.p1!.at;
      drag([before, [before[0] + 0.3, before[1] - 0.3]]);
      expect(editor.home.pieces.p1!.at !== before, stage).toBe(moves);
    }
    editor.setStage('judge');
    const from = editor.camera.centre[0];
    drag([
      [4, 2],
      [4.5, 2],
    ]);
    expect(editor.camera.centre[0]).toBeCloseTo(from - 0.5, 6);
  });
});

describe('dragging', () => {
  it('is one step, by the whole way from where it began', async () => {
    const { editor, drag } = await drive({ home: twoBeds() });
    drag([
      [1.5, 2],
      [1.8, 2.2],
      [3, 4],
      [2.13, 2.31],
    ]);
    const { at } = editor.home.pieces.p1!;
    expect(Math.abs(at[0] - 2.13)).toBeLessThan(0.1);
    expect(Math.abs(at[1] - 2.31)).toBeLessThan(0.1);
    editor.undo();
    expect(editor.home.pieces.p1!.at).toEqual([1.5, 2]);
    expect(editor.canUndo).toBe(false);
  });

  it('with alt nothing pulls', async () => {
    const { editor, drag } = await drive({ home: twoBeds() });
    drag(
      [
        [1.5, 2],
        [1.847, 2.123],
      ],
      { alt: true },
    );
    expect(editor.home.pieces.p1!.at[0]).toBeCloseTo(1.847, 3);
    expect(editor.home.pieces.p1!.at[1]).toBeCloseTo(2.123, 3);
  });

  it('moves all that is selected', async () => {
    const { editor, drag } = await drive({ home: twoBeds() });
    editor.select([P1, P2]);
    drag(
      [
        [4, 2],
        [4.25, 2.5],
      ],
      { alt: true },
    );
    expect(editor.home.pieces.p1!.at).toEqual([1.75, 2.5]);
    expect(editor.home.pieces.p2!.at).toEqual([4.25, 2.5]);
  });

  it('a press that trembles is a click', async () => {
    const { editor, drag } = await drive({ home: twoBeds() });
    drag([
      [1.5, 2],
      [1.52, 2.01],
      [1.5, 2.02],
    ]);
    expect(editor.selection).toEqual([P1]);
    expect(editor.canUndo).toBe(false);
  });

  it('Escape, a second finger and a lost pointer each give back the very same home', async () => {
    const { editor, drag, lift, key } = await drive({ home: twoBeds() });
    const before = editor.home;
    const path: [number, number][] = [
      [1.5, 2],
      [2.5, 3],
    ];
    drag(path, { hold: true });
    expect(editor.home).not.toBe(before);
    key('Escape');
    expect(editor.home).toBe(before);
    lift([2.5, 3]);
    expect(editor.home).toBe(before);

    drag(path, { hold: true, type: 'touch' });
    drag([[4, 4]], { hold: true, id: 2, type: 'touch' });
    expect(editor.home).toBe(before);
    lift([4, 4], { id: 2, type: 'touch' });
    lift([2.5, 3], { type: 'touch' });

    drag(path, { hold: true });
    editor.pointer.cancel({ ...input, id: 1 });
    expect(editor.home).toBe(before);
    expect(editor.canUndo).toBe(false);
  });

  it('a room that is not selected is not moved by accident; one that is, moves', async () => {
    const { editor, drag, click } = await drive({ home: twoBeds() });
    const outline = editor.home.rooms.r1!.outline;
    drag([
      [0.3, 4.5],
      [1.3, 4.6],
    ]);
    expect(editor.home.rooms.r1!.outline).toBe(outline);
    click([0.3, 4.5]);
    drag(
      [
        [0.3, 4.5],
        [0.8, 4.5],
      ],
      { alt: true },
    );
    expect(editor.home.rooms.r1!.outline[0]).toEqual([0.5, 0]);
  });
});

const input = {
  id: 1,
  type: 'mouse',
  x: 0,
  y: 0,
  button: 0,
  shift: false,
  alt: false,
  command: false,
  time: 0,
} as const;

describe('handles', () => {
  it('a corner of a room is dragged and comes level with its neighbours', async () => {
    const { editor, drag, click } = await drive({ home: twoBeds() });
    click([0.3, 0.3]);
    expect(editor.overlay.filter(({ mark }) => mark === 'handle').length).toBeGreaterThanOrEqual(4);
    drag([
      [6, 5],
      [5, 4],
      [6.04, 3.52],
    ]);
    expect(editor.home.rooms.r1!.outline[2]).toEqual([6, 3.5]);
    expect(editor.canUndo).toBe(true);
    editor.undo();
    expect(editor.home.rooms.r1!.outline[2]).toEqual([6, 5]);
    expect(editor.canUndo).toBe(false);
  });

  it('a bed turns in steps of 15° and rests square; with alt it turns freely', async () => {
    const { editor, drag, click } = await drive({ home: twoBeds() });
    click([1.5, 2]);
    const turn = () => {
      const handle = editor.overlay.find((mark) => mark.mark === 'handle' && mark.role === 'turn');
      return handle?.mark === 'handle' ? handle.at : ([NaN, NaN] as const);
    };
    const towards = (degrees: number): [number, number] => {
      const radians = ((degrees + 90) * Math.PI) / 180;
      return [1.5 + 1.4 * Math.cos(radians), 2 + 1.4 * Math.sin(radians)];
    };
    drag([turn(), towards(20), towards(32)]);
    expect(editor.home.pieces.p1!.angle).toBeCloseTo(30, 6);
    drag([turn(), towards(84)]);
    expect(editor.home.pieces.p1!.angle).toBeCloseTo(90, 6);
    drag([turn(), towards(71)], { alt: true });
    expect(editor.home.pieces.p1!.angle).toBeCloseTo(71, 0);
  });

  it('show where things are drawn; elsewhere a selection only says what is spoken of', async () => {
    const { editor } = await drive({ home: twoBeds() });
    const shown = () => editor.overlay.filter(({ mark }) => mark === 'handle').length > 0;
    const seen = (['sketch', 'survey', 'map', 'judge', 'arrange'] as const).map((stage) => {
      editor.setStage(stage);
      editor.select([{ kind: 'room', id: 'r1' }]);
      const room = shown();
      editor.select([P1]);
      return [stage, room, shown()];
    });
    expect(seen).toEqual([
      ['sketch', true, true],
      ['survey', false, false],
      ['map', false, false],
      ['judge', false, false],
      ['arrange', false, true],
    ]);
  });
});

describe('keys on what is selected', () => {
  it('arrows move by 5 cm and with shift by half a metre, each one step', async () => {
    const { editor, key } = await drive({ home: twoBeds() });
    editor.select([P1]);
    key('ArrowRight');
    key('ArrowUp', { shift: true });
    expect(editor.home.pieces.p1!.at).toEqual([1.55, 2.5]);
    key('z', { command: true });
    expect(editor.home.pieces.p1!.at).toEqual([1.55, 2]);
  });

  it('fault: a plan that is only looked at was moved by the arrow keys', async () => {
    const { editor, key } = await drive({ home: twoBeds() });
    for (const [stage, moves] of [
      ['sketch', true],
      ['map', false],
      ['judge', false],
      ['arrange', true],
    ] as const) {
      editor.setStage(stage);
      editor.select([P1]);
      const before = editor.home;
      key('ArrowRight');
      key('r');
      expect(editor.home !== before, stage).toBe(moves);
    }
  });

  it('Delete takes it away and one undo brings it back', async () => {
    const { editor, key } = await drive({ home: twoBeds() });
    const before = editor.home;
    editor.select([P1, P2]);
    key('Delete');
    expect(Object.keys(editor.home.pieces)).toEqual([]);
    expect(editor.selection).toEqual([]);
    key('z', { command: true });
    expect(editor.home).toEqual(before);
    key('z', { command: true, shift: true });
    expect(Object.keys(editor.home.pieces)).toEqual([]);
  });

  it('Escape lets go of the tool, then of the selection', async () => {
    const { editor, key } = await drive({ home: twoBeds() });
    editor.select([P1]);
    editor.useTool('walk');
    key('Escape');
    expect([editor.tool, editor.selection]).toEqual(['select', [P1]]);
    key('Escape');
    expect(editor.selection).toEqual([]);
  });
});
