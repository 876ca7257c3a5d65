import { describe, expect, it } from 'vitest';
import { addPiece } from '../../src/home/edits/add';
import type { Point } from '../../src/home/home';
import { bedroom, box, homeWith, room } from '../support/homes';
import { drive } from '../support/driver';

const FINGER = { type: 'touch' } as const;
const M1 = { kind: 'reading', id: 'm1' } as const;

/** From a place, 40 px up the paper in two steps. */
const stroke = ([x, y]: Point): Point[] => [
  [x, y],
  [x, y + 0.2],
  [x, y + 0.4],
];

describe('one finger in survey', () => {
  it('moves the paper where it starts on a reading that was not picked before', async () => {
    const { editor, drag } = await drive({ home: bedroom() });
    editor.setStage('survey');
    const { home, camera } = editor;
    const at = home.readings.m1!.at;
    drag(stroke(at), FINGER);
    expect(editor.home).toBe(home);
    expect(editor.selection).toEqual([]);
    expect(editor.camera.centre).not.toEqual(camera.centre);
  });

  it('moves a reading that is selected', async () => {
    const { editor, click, drag } = await drive({ home: bedroom() });
    editor.setStage('survey');
    const at = editor.home.readings.m1!.at;
    click(at, FINGER);
    expect(editor.selection).toEqual([M1]);
    drag(stroke(at), FINGER);
    expect(editor.home.readings.m1!.at[1]).toBeCloseTo(at[1] + 0.4);
  });

  it('a mouse moves any reading, but not by a tremble of 4 px', async () => {
    const { editor, drag } = await drive({ home: bedroom() });
    editor.setStage('survey');
    const { home } = editor;
    const [x, y] = home.readings.m1!.at;
    drag([
      [x, y],
      [x, y + 0.04],
    ]);
    expect(editor.home).toBe(home);
    drag(stroke([x, y]));
    expect(editor.home.readings.m1!.at[1]).toBeCloseTo(y + 0.4);
  });
});

describe('one finger with a sign in hand', () => {
  const bed = { piece: { kind: 'bed', name: '', size: [1.4, 2] } } as const;
  const load = { piece: { ...bed.piece, size: [1.4, 2] as [number, number] } };

  it('sets a bed down by a tap', async () => {
    const { editor, click } = await drive({ home: homeWith(room(box(0, 0, 6, 5))) });
    editor.useTool('piece', load);
    click([3, 2.5], FINGER);
    expect(Object.keys(editor.home.pieces)).toHaveLength(1);
  });

  it('moves the paper by a drag, and keeps the sign in hand', async () => {
    const { editor, drag } = await drive({ home: homeWith(room(box(0, 0, 6, 5))) });
    for (const [tool, carried] of [
      ['piece', load],
      ['opening', { opening: { kind: 'door' as const } }],
    ] as const) {
      editor.useTool(tool, carried);
      const { home, camera } = editor;
      drag(stroke([3, 0]), FINGER);
      expect(editor.home).toBe(home);
      expect(editor.tool).toBe(tool);
      expect(editor.camera.centre).not.toEqual(camera.centre);
    }
  });
});

describe('the tool a stage is worked with', () => {
  it('in survey a press places the reading also after another home was opened', async () => {
    const { editor, click } = await drive({ home: bedroom() });
    editor.setStage('survey');
    await editor.shelf.begin(homeWith(room(box(0, 0, 6, 5))));
    editor.zoomBy(100 / editor.camera.scale);
    click([2, 2]);
    expect(editor.selection).toEqual([]);
    expect(editor.readingPlace).toEqual([2, 2]);
  });

  it('escape and another stage lead back to it', async () => {
    const { editor, key } = await drive({ home: bedroom() });
    editor.useTool('opening', { opening: { kind: 'door' } });
    editor.setStage('survey');
    expect(editor.tool).toBe('reading');
    editor.useTool('walk');
    key('Escape');
    expect(editor.tool).toBe('reading');
    editor.setStage('map');
    expect(editor.tool).toBe('select');
  });
});

describe('two taps on the paper', () => {
  it('show the whole home', async () => {
    const { editor, click } = await drive({
      home: homeWith(
        room(box(0, 0, 6, 5)),
        addPiece({ kind: 'bed', level: 'l1', at: [1.5, 2], size: [1, 2] }),
      ),
    });
    editor.showAll();
    const whole = editor.camera;
    editor.zoomBy(3);
    click([4, 4], FINGER);
    click([4, 4], FINGER);
    expect(editor.camera).toEqual(whole);
  });

  it('do not where they are a bed, too slow, or apart', async () => {
    const { editor, click, clock } = await drive({
      home: homeWith(
        room(box(0, 0, 6, 5)),
        addPiece({ kind: 'bed', level: 'l1', at: [1.5, 2], size: [1, 2] }),
      ),
    });
    const { camera } = editor;
    click([1.5, 2], FINGER);
    click([1.5, 2], FINGER);
    clock.pass(1000);
    click([4, 4], FINGER);
    clock.pass(1000);
    click([4, 4], FINGER);
    click([5, 4], FINGER);
    expect(editor.camera).toEqual(camera);
  });
});

it('the snap dot goes with the finger that drew a room', async () => {
  const { editor, drag } = await drive({ home: homeWith() });
  editor.useTool('room', { room: { by: 'drag' } });
  drag(
    [
      [0, 0],
      [2, 2],
      [4, 3],
    ],
    FINGER,
  );
  expect(Object.keys(editor.home.rooms)).toHaveLength(1);
  expect(editor.overlay.filter(({ mark }) => mark === 'corner')).toEqual([]);
});

it('the cross knows that it lies over the value just kept', async () => {
  const { editor } = await drive({ home: bedroom() });
  editor.setStage('survey');
  const at = editor.home.readings.m1!.at;
  editor.setReadingPlace(at);
  expect(editor.overlay).toContainEqual({ mark: 'aim', at, over: true });
  editor.setReadingPlace([at[0] + 0.3, at[1]]);
  expect(editor.overlay).toContainEqual({ mark: 'aim', at: [at[0] + 0.3, at[1]], over: false });
});
