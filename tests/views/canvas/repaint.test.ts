import { describe, expect, test } from 'vitest';
import { setSettings } from '../../../src/home/edits/setSettings';
import { LAYER_INPUTS } from '../../../src/views/canvas/layerInputs';
import { createRepaint } from '../../../src/views/canvas/repaint';
import { createSceneReader, type Scene } from '../../../src/views/canvas/scene';
import type { LayerName } from '../../../src/views/canvas/stage';
import { drive } from '../../support/driver';
import { bedroom } from '../../support/homes';

/** A session whose layers only count: `drawn` says which of them the next frame draws. */
async function paintedSession() {
  const driver = await drive({ home: bedroom() });
  driver.editor.setStage('map');
  driver.settle();
  const read = createSceneReader(driver.editor);
  const repaint = createRepaint<Scene>(
    (Object.keys(LAYER_INPUTS) as LayerName[]).map((name) => ({
      name,
      inputs: LAYER_INPUTS[name],
      draw: () => {},
    })),
  );
  const drawn = () => repaint(read('wide'));
  const first = drawn();
  return { ...driver, drawn, first };
}

describe('a frame draws again only what has changed', () => {
  test('everything at first, then nothing', async () => {
    const { first, drawn } = await paintedSession();
    expect(first).toEqual(['estimate', 'plan', 'objects', 'overlay']);
    expect(drawn()).toEqual([]);
  });

  test('a moving pointer: the overlay alone', async () => {
    const { hover, drawn } = await paintedSession();
    for (const x of [2, 2.5, 3]) {
      hover([x, 2]);
      expect(drawn()).toEqual(['overlay']);
    }
  });

  test('a lit band: the layer of the ink alone, so that lettering stays over its line', async () => {
    const { editor, drawn } = await paintedSession();
    editor.lightBand(4);
    expect(drawn()).toEqual(['estimate']);
  });

  test('a moved camera: every layer, once', async () => {
    const { editor, drawn } = await paintedSession();
    editor.panBy(10, 0);
    expect(drawn()).toHaveLength(4);
    expect(drawn()).toEqual([]);
  });

  test('a dragged bed leaves the walls and the ink as they are', async () => {
    const { editor, drag, drawn } = await paintedSession();
    editor.setStage('arrange');
    drawn();
    drag(
      [
        [1, 2.4],
        [1.5, 2.4],
        [2.4, 2.2],
      ],
      { hold: true },
    );
    expect(editor.home.pieces.p1!.at).not.toEqual([1, 3]);
    const layers = drawn();
    expect(layers).toContain('objects');
    expect(layers).not.toContain('plan');
    expect(layers).not.toContain('estimate');
  });

  test('a dragged reading: its dot when it moves, the ink when the map follows', async () => {
    const { editor, drag, drawn, hover, clock, engine } = await paintedSession();
    editor.setStage('survey');
    drawn();
    drag(
      [
        [0.5, 0.5],
        [1, 1],
      ],
      { hold: true },
    );
    expect(drawn()).toEqual(['objects', 'overlay']);
    clock.pass(20);
    engine.work();
    // Contour labels leave with the first picture that follows the hand; then the ink changes alone.
    expect(drawn()).toEqual(['estimate', 'objects']);
    hover([1.2, 1]);
    expect(drawn()).toEqual(['objects', 'overlay']);
    clock.pass(20);
    engine.work();
    expect(drawn()).toEqual(['estimate']);
  });

  test('another target moves its line at once, before the map is worked out again', async () => {
    const { editor, drawn } = await paintedSession();
    const read = createSceneReader(editor);
    const before = read('wide').target;
    editor.run(setSettings({ target: 0.2 }));
    const after = read('wide');
    expect(after.target).not.toBe(before);
    expect(after.target.length).toBeGreaterThan(0);
    const layers = drawn();
    expect(layers).toContain('estimate');
    expect(layers).not.toContain('plan');
  });
});
