import { describe, expect, test } from 'vitest';
import { addReading } from '../../../src/home/edits/add';
import { change } from '../../../src/home/edits/change';
import type { Stage } from '../../../src/editor/editor';
import { paintEstimate } from '../../../src/views/canvas/estimateLayer';
import { PRINT_INK, tint } from '../../../src/views/canvas/ink';
import { paintObjects } from '../../../src/views/canvas/objectsLayer';
import { paintOverlay } from '../../../src/views/canvas/overlayLayer';
import { createSceneReader } from '../../../src/views/canvas/scene';
import { drive } from '../../support/driver';
import { bedroom } from '../../support/homes';
import { recordedContext, type Call } from '../../support/recordedContext';

async function session(stage: Stage, home = bedroom()) {
  const driver = await drive({ home });
  driver.editor.setStage(stage);
  driver.settle();
  const read = createSceneReader(driver.editor);
  const paint = (layer: typeof paintObjects) => {
    const { context, calls } = recordedContext();
    const scene = read('wide');
    layer({ context, camera: scene.camera, ink: PRINT_INK }, scene);
    return calls;
  };
  return { ...driver, read, paint };
}

/** A bedroom that is mapped at once. */
const kriged = () => ({ ...bedroom(), settings: { ...bedroom().settings, method: 'kriging' as const } });

const texts = (calls: Call[]) => calls.filter(({ name }) => name === 'fillText').map(({ given }) => given[0]);

describe('the estimate', () => {
  test('is inked band by band from the lowest, clipped to the floor, even-odd', async () => {
    const { paint } = await session('map');
    const calls = paint((sheet, scene) =>
      paintEstimate(sheet, scene.picture!, scene.plan.floor, scene.contours, scene.target),
    );
    expect(calls.find(({ name }) => name === 'clip')!.given).toEqual(['evenodd']);
    const tints = PRINT_INK.bands.slice(1);
    const inked = calls.filter(({ name, given }) => name === 'fill' && given[0] === 'evenodd');
    const order = inked.map(({ fillStyle }) => tints.indexOf(String(fillStyle)));
    expect(order.length).toBeGreaterThan(3);
    expect(order).toEqual(order.toSorted((a, b) => a - b));
    expect(order[0]).toBeGreaterThanOrEqual(0);
    expect(inked.at(-1)!.fillStyle).not.toBe(tint(PRINT_INK, -1));
  });

  test('is not there under three readings, and nothing is hatched in its place', async () => {
    const home = { ...bedroom(), readings: {} };
    const { read } = await session('map', home);
    expect(read('wide').picture).toBeNull();
  });
});

describe('what shows at each stage', () => {
  test('survey: readings with their values', async () => {
    const { paint, editor } = await session('survey');
    const shown = texts(paint(paintObjects));
    const values = Object.values(editor.home.readings);
    expect(values.length).toBe(12);
    expect(shown.filter((text) => /^\d/.test(String(text))).length).toBeGreaterThan(8);
  });

  test('judge: the room with its middle value and unit, no readings', async () => {
    const { paint, editor } = await session('judge');
    const shown = texts(paint(paintObjects));
    expect(shown.some((text) => /^0\.\d+ µT$/.test(String(text)))).toBe(true);
    const median = editor.results.assessment!.rooms[0]!.median;
    expect(shown).toContain(`${Number(median.toPrecision(2))} µT`);
  });

  test('arrange: pieces and names without values', async () => {
    const { paint } = await session('arrange');
    const shown = texts(paint(paintObjects));
    expect(shown).toContain('A');
    expect(shown.some((text) => String(text).includes('µT'))).toBe(false);
  });

  test('a reading left out keeps its sign but counts as struck; one below range says so', async () => {
    const driver = await session('survey');
    driver.editor.run(addReading({ level: 'l1', at: [4.5, 0.4], value: 0.02, limit: 'below' }));
    driver.editor.run(change({ collection: 'readings', id: 'm1' }, { excluded: 'beside the phone' }));
    const calls = driver.paint(paintObjects);
    expect(texts(calls)).toContain('< 0.020');
    const struck = calls.filter(
      ({ name, strokeStyle }) => name === 'stroke' && strokeStyle === PRINT_INK.text3,
    );
    expect(struck.length).toBe(2);
  });
});

describe('the overlay', () => {
  test('fills the frame in accent as far as the map is worked out', async () => {
    const { paint, read, editor } = await session('map');
    const { context, calls } = recordedContext();
    const scene = read('wide');
    const running = { ...scene, results: { ...editor.results, state: 'running' as const, progress: 0.5 } };
    paintOverlay({ context, camera: scene.camera, ink: PRINT_INK }, running);
    const marks = (all: Call[], colour: string) =>
      all.filter(({ name, fillStyle }) => name === 'fillRect' && fillStyle === colour).length;
    expect(marks(calls, PRINT_INK.accent)).toBeGreaterThan(0);
    expect(marks(calls, PRINT_INK.text)).toBeGreaterThan(0);
    expect(marks(paint(paintOverlay), PRINT_INK.accent)).toBe(0);
  });

  test('invites to draw on an empty sheet, and only there', async () => {
    const empty = await session('sketch', { ...bedroom(), rooms: {}, pieces: {}, readings: {} });
    expect(texts(empty.paint(paintOverlay))).toContain('Drag out the first room');
    const drawn = await session('sketch');
    expect(texts(drawn.paint(paintOverlay))).not.toContain('Drag out the first room');
  });

  test('says why there is no estimate, and how far the nearest reading is', async () => {
    const { paint, editor, read } = await session('map');
    const scene = read('wide');
    const { context, calls } = recordedContext();
    const probe = { ...editor.estimateAt([2, 2]), supported: false, reason: 'far' as const, nearest: 3.14 };
    paintOverlay({ context, camera: scene.camera, ink: PRINT_INK }, { ...scene, probe });
    expect(texts(calls)).toEqual(expect.arrayContaining(['No estimate here', 'nearest reading 3.1 m']));
    expect(texts(paint(paintOverlay))).not.toContain('No estimate here');
  });
});

describe('places to read next', () => {
  test('are triangles with their rank, at the map and in the survey, and nowhere else', async () => {
    const { editor, planner, paint } = await session('map', kriged());
    editor.askNext({ kind: 'piece', id: 'p1' });
    planner.work();
    const ranks = editor.next.answer!.readings.map((_, i) => String(i + 1));
    expect(ranks.length).toBeGreaterThan(1);
    for (const stage of ['map', 'survey'] as const) {
      editor.setStage(stage);
      expect(texts(paint(paintOverlay)).slice(0, ranks.length)).toEqual(ranks);
    }
    editor.setStage('arrange');
    expect(texts(paint(paintOverlay))).not.toContain('1');
  });

  test('the chosen one has a second casing; stale ones are dashed and lose the accent', async () => {
    const { editor, planner, paint } = await session('map', kriged());
    editor.askNext({ kind: 'piece', id: 'p1' });
    planner.work();
    const strokes = () => paint(paintOverlay).filter(({ name }) => name === 'stroke').length;
    const plain = strokes();
    editor.pickNext(0);
    expect(strokes()).toBe(plain + 2);
    const accents = () =>
      paint(paintOverlay).filter(
        ({ name, fillStyle }) => name === 'fillText' && fillStyle === PRINT_INK.accent,
      );
    expect(accents().length).toBe(editor.next.answer!.readings.length);
    editor.run(addReading({ level: 'l1', at: [2, 2], value: 0.3 }));
    editor.cancelAssessment();
    expect(editor.next.stale).toBe(true);
    expect(accents()).toEqual([]);
  });
});
