import { describe, expect, it } from 'vitest';
import { toPlan, toScreen } from '../../src/editor/camera';
import { bedroom } from '../support/homes';
import { drive } from '../support/driver';

const at = { type: 'touch', button: 0, shift: false, alt: false, command: false, time: 0 } as const;
const wheel = { ...at, id: 1, type: 'mouse', x: 200, y: 100, dx: 0, dy: 0, pinch: false } as const;

describe('camera', () => {
  it('screen → plan is the inverse of plan → screen, with y up the page', async () => {
    const { editor } = await drive({ home: bedroom() });
    const [x, y] = toScreen(editor.camera, [1.3, 2.7]);
    const back = toPlan(editor.camera, x, y);
    expect(back[0]).toBeCloseTo(1.3, 9);
    expect(back[1]).toBeCloseTo(2.7, 9);
    expect(toScreen(editor.camera, [1.3, 3.7])[1]).toBeLessThan(y);
  });

  it('the wheel zooms about the pointer, shift and wheel move the paper sideways', async () => {
    const { editor } = await drive({ home: bedroom() });
    const held = toPlan(editor.camera, 200, 100);
    const { scale } = editor.camera;
    editor.pointer.wheel({ ...wheel, dy: -240 });
    expect(editor.camera.scale).toBeGreaterThan(scale);
    expect(toPlan(editor.camera, 200, 100)[0]).toBeCloseTo(held[0], 9);
    expect(toPlan(editor.camera, 200, 100)[1]).toBeCloseTo(held[1], 9);
    const { centre } = editor.camera;
    editor.pointer.wheel({ ...wheel, dy: 50, shift: true });
    expect(editor.camera.centre[0]).toBeGreaterThan(centre[0]);
    expect(editor.camera.centre[1]).toBe(centre[1]);
  });

  it('stays within its limits', async () => {
    const { editor } = await drive();
    for (let i = 0; i < 200; i += 1) editor.zoomBy(1.5);
    const most = editor.camera.scale;
    for (let i = 0; i < 400; i += 1) editor.zoomBy(0.5);
    expect(most).toBeLessThanOrEqual(1200);
    expect(editor.camera.scale).toBeGreaterThanOrEqual(0.3);
  });

  it('shows the whole home, or a sheet of 12 × 9 m where nothing is drawn', async () => {
    const { editor } = await drive({ home: bedroom() });
    editor.showAll();
    expect(editor.camera.centre).toEqual([2.5, 2]);
    for (const corner of [
      [0, 0],
      [5, 4],
    ] as const) {
      const [x, y] = toScreen(editor.camera, corner);
      expect(x >= 0 && x <= 800 && y >= 0 && y <= 600).toBe(true);
    }
    const empty = await drive();
    empty.editor.showAll();
    expect(empty.editor.camera.centre).toEqual([6, 4.5]);
    expect(empty.editor.camera.scale * 12).toBeLessThanOrEqual(800);
    expect(empty.editor.camera.scale * 9).toBeLessThanOrEqual(600);
  });

  it('a street line that runs on for long does not make the home small', async () => {
    const home = bedroom();
    const far = {
      id: 's1',
      kind: 'line',
      name: '',
      level: 'l1',
      height: 8,
      falloff: 'fit',
      origin: 'outside',
    } as const;
    const path: [number, number][] = [
      [-30, -8],
      [40, -8],
    ];
    const { editor } = await drive({ home: { ...home, sources: { s1: { ...far, path } } } });
    editor.showAll();
    expect(editor.camera.centre).toEqual([2.5, 2]);
  });

  it('the whole home leaves the corner of the needle free', async () => {
    for (const [width, height] of [
      [800, 600],
      [310, 500],
      [680, 600],
    ] as const) {
      const { editor } = await drive({ home: bedroom() });
      editor.resize(width, height);
      editor.showAll();
      const [x, y] = toScreen(editor.camera, [5, 4]);
      expect(x <= width - 50 || y >= 60).toBe(true);
      expect(toScreen(editor.camera, [0, 0])[0]).toBeGreaterThan(20);
    }
  });

  it('the whole home stays in view when the window changes, until somebody moves the paper', async () => {
    const { editor } = await drive({ home: bedroom() });
    editor.showAll();
    editor.resize(400, 300);
    const whole = editor.camera;
    editor.showAll();
    expect(editor.camera).toEqual(whole);
  });

  it('a resize keeps the centre and the scale of paper that was moved', async () => {
    const { editor } = await drive({ home: bedroom() });
    editor.panBy(30, 0);
    const { centre, scale } = editor.camera;
    editor.resize(400, 700);
    expect(editor.camera).toEqual({ centre, scale, width: 400, height: 700 });
  });

  it('two fingers that part by half zoom by half, about their middle', async () => {
    const { editor } = await drive({ home: bedroom() });
    const { scale } = editor.camera;
    const middle = toPlan(editor.camera, 400, 300);
    editor.pointer.down({ ...at, id: 1, x: 300, y: 300 });
    editor.pointer.down({ ...at, id: 2, x: 500, y: 300 });
    editor.pointer.move({ ...at, id: 1, x: 250, y: 300 });
    editor.pointer.move({ ...at, id: 2, x: 550, y: 300 });
    expect(editor.camera.scale / scale).toBeCloseTo(1.5, 9);
    const after = toPlan(editor.camera, 400, 300);
    expect(after[0]).toBeCloseTo(middle[0], 9);
    expect(after[1]).toBeCloseTo(middle[1], 9);
  });

  it('the finger that stays after a pinch does nothing more', async () => {
    const { editor } = await drive({ home: bedroom() });
    const before = editor.home;
    editor.pointer.down({ ...at, id: 1, x: 300, y: 300 });
    editor.pointer.down({ ...at, id: 2, x: 500, y: 300 });
    editor.pointer.up({ ...at, id: 2, x: 500, y: 300 });
    const { camera } = editor;
    editor.pointer.move({ ...at, id: 1, x: 100, y: 100 });
    editor.pointer.up({ ...at, id: 1, x: 100, y: 100 });
    expect(editor.camera).toBe(camera);
    expect(editor.home).toBe(before);
    expect(editor.selection).toEqual([]);
  });

  it('the middle button, the space bar and the hand move the paper and nothing else', async () => {
    const { editor, drag, key } = await drive({ home: bedroom() });
    const before = editor.home;
    const moves = (how = {}) => {
      const from = editor.camera.centre[0];
      drag(
        [
          [1, 3],
          [2, 3],
        ],
        how,
      );
      return editor.camera.centre[0] - from;
    };
    expect(moves({ button: 1 })).toBeCloseTo(-1, 6);
    key(' ');
    expect(editor.cursor).toBe('grabbing');
    expect(moves()).toBeCloseTo(-1, 6);
    editor.keyUp({ key: ' ', shift: false, alt: false, command: false });
    editor.useTool('pan');
    expect(moves()).toBeCloseTo(-1, 6);
    expect(editor.home).toBe(before);
  });

  it('one finger on bare paper moves it too', async () => {
    const { editor, drag } = await drive({ home: bedroom() });
    const from = editor.camera.centre[0];
    drag(
      [
        [4, 1.4],
        [4.5, 1.4],
      ],
      { type: 'touch' },
    );
    expect(editor.camera.centre[0]).toBeCloseTo(from - 0.5, 6);
    expect(editor.selection).toEqual([]);
  });
});
