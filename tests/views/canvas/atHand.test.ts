import { describe, expect, test } from 'vitest';
import { addOpening } from '../../../src/home/edits/add';
import { tryEdit } from '../../../src/editor/store';
import { toScreen } from '../../../src/editor/camera';
import { bandOf } from '../../../src/engine/contours/thresholds';
import { bounds, containsEvenOdd } from '../../../src/engine/geometry/polygon';
import { rectangle } from '../../../src/engine/geometry/pose';
import { PRINT_INK, tint } from '../../../src/views/canvas/ink';
import { LAYER_INPUTS } from '../../../src/views/canvas/layerInputs';
import { paintGood } from '../../../src/views/canvas/paintGood';
import { paintHandNote } from '../../../src/views/canvas/paintHandNote';
import { paintOverlay } from '../../../src/views/canvas/overlayLayer';
import { createRepaint } from '../../../src/views/canvas/repaint';
import { createSceneReader, type Scene } from '../../../src/views/canvas/scene';
import type { LayerName } from '../../../src/views/canvas/stage';
import type { Form } from '../../../src/views/layout.svelte';
import type { Sheet } from '../../../src/views/canvas/sheet';
import { drive } from '../../support/driver';
import { bedroom } from '../../support/homes';
import { recordedContext, type Call } from '../../support/recordedContext';

/** A mapped bedroom with a door that opens inwards, its bed picked up where furniture is arranged. */
async function session(size: readonly [number, number] = [800, 600]) {
  const made = tryEdit(bedroom(), addOpening({ room: 'r1', kind: 'door', wall: 0, offset: 3, width: 0.8 }));
  if ('problem' in made) throw new Error(made.problem.kind);
  const { home } = made.change;
  const driver = await drive({
    home: { ...home, settings: { ...home.settings, method: 'kriging' } },
    scale: size[0] < 600 ? 60 : 100,
  });
  driver.editor.resize(...size);
  driver.settle();
  driver.editor.setStage('arrange');
  driver.planner.work();
  driver.editor.arranging.leave();
  driver.click([1, 2.6]);
  driver.planner.work();
  const read = createSceneReader(driver.editor);
  const paint = (painter: (sheet: Sheet, scene: Scene) => void, form: Form = 'wide') => {
    const { context, calls } = recordedContext();
    const scene = read(form);
    painter({ context, camera: scene.camera, ink: PRINT_INK }, scene);
    return calls;
  };
  return { ...driver, read, paint };
}

const texts = (calls: Call[]) => calls.filter(({ name }) => name === 'fillText').map(({ given }) => given[0]);

/** The bed carried to before the door, not let go. */
const toDoor = {
  path: [
    [1, 2.6],
    [2, 2],
    [3.3, 0.9],
  ] as [number, number][],
};

describe('the area of a piece at hand', () => {
  test('has the inks of the map: of each place that of the mean field it would have there', async () => {
    const { read } = await session();
    const { area } = read('wide').good!;
    let looked = 0;
    for (const { grid, dose, bands } of area.rooms) {
      dose.forEach((value, k) => {
        if (Number.isNaN(value)) return;
        const at = [
          grid.x0 + ((k % grid.nx) + 0.5) * grid.step,
          grid.y0 + (Math.floor(k / grid.nx) + 0.5) * grid.step,
        ] as const;
        const over = bands
          .filter(({ polygons }) => containsEvenOdd(polygons.flat(), at))
          .map(({ value: edge }) => edge);
        const mean = value / 8;
        // Places at a band's very edge may lie on either side of its line.
        if ([0.02, 0.03, 0.05, 0.1, 0.2, 0.3, 0.5].some((edge) => Math.abs(mean / edge - 1) < 0.02)) return;
        expect(bandOf(Math.max(0, ...over)), `${at}`).toBe(bandOf(mean));
        looked += 1;
      });
    }
    expect(looked).toBeGreaterThan(20);
  });

  test('is inked from the lowest band up on bare paper, with its good part in accent', async () => {
    const { paint } = await session();
    const calls = paint((sheet, scene) => paintGood(sheet, scene.good!));
    const inked = calls
      .filter(({ name, given }) => name === 'fill' && given[0] === 'evenodd')
      .map(({ fillStyle }) => fillStyle);
    const tints = PRINT_INK.bands;
    expect(inked[0]).toBe(tint(PRINT_INK, -1));
    const order = inked.map((fill) => tints.indexOf(String(fill)));
    expect(order).toEqual(order.toSorted((a, b) => a - b));
    expect(order.length).toBeGreaterThan(2);
    expect(calls.some(({ name, strokeStyle }) => name === 'stroke' && strokeStyle === PRINT_INK.accent)).toBe(
      true,
    );
  });

  test('is neither worked out nor painted again while the piece moves', async () => {
    const { read, drag, hover, planner } = await session();
    const drawn = { estimate: 0, plan: 0, objects: 0, overlay: 0 };
    const repaint = createRepaint<Scene>(
      (Object.keys(LAYER_INPUTS) as LayerName[]).map((name) => ({
        name,
        inputs: LAYER_INPUTS[name],
        draw: () => void (drawn[name] += 1),
      })),
    );
    repaint(read('wide'));
    drag(
      [
        [1, 2.6],
        [1.3, 2.6],
      ],
      { hold: true },
    );
    for (let frame = 0; frame < 20; frame++) {
      hover([1.4 + 0.07 * frame, 2.5]);
      repaint(read('wide'));
    }
    expect(drawn).toEqual({ estimate: 1, plan: 1, objects: 21, overlay: 21 });
    expect(planner.count('good')).toBe(1);
  });
});

describe('beside the piece in the hand', () => {
  test('stand its dose with its interval and the rule it breaks, clear of the piece, on a phone too', async () => {
    for (const [size, form] of [
      [[800, 600], 'wide'],
      [[340, 420], 'phone'],
    ] as const) {
      const { editor, paint, drag, clock, engine } = await session(size);
      expect(texts(paint(paintHandNote, form))).toEqual([]);
      drag(toDoor.path, { hold: true });
      clock.pass(20);
      engine.work();
      const calls = paint(paintHandNote, form);
      const said = texts(calls).join(' ');
      expect(said).toMatch(/^\d\.\d+ µT·h {2}\(\d\.\d+–\d\.\d+\)/);
      expect(said).toContain('door');
      expect(texts(calls).length).toBeLessThanOrEqual(4);
      const [x, y, width, height] = calls.find(({ name }) => name === 'rect')!.given as [
        number,
        number,
        number,
        number,
      ];
      const { put } = editor.atHand!;
      const foot = bounds(rectangle(put, [1.4, 2]).map((p) => toScreen(editor.camera, p)));
      const apart = x >= foot.x1 || x + width <= foot.x0 || y >= foot.y1 || y + height <= foot.y0;
      expect(apart, `${form}`).toBe(true);
      expect([x >= 0, y >= 0, x + width <= size[0], y + height <= size[1]]).toEqual([true, true, true, true]);
    }
  });

  test('stands a flag where it broke a rule and was let go, and none where it keeps them', async () => {
    const { editor, paint, drag } = await session();
    // Paper inside an open pennant: the one thing of the overlay that is filled with paper and stroked like a wall.
    const flags = (calls: Call[]) =>
      calls.filter(
        ({ name, strokeStyle, lineWidth }) =>
          name === 'stroke' && strokeStyle === PRINT_INK.wall && lineWidth === 1.6,
      );
    expect(editor.broken).toEqual({});
    expect(flags(paint(paintOverlay))).toHaveLength(0);
    drag(toDoor.path);
    editor.select([]);
    expect(flags(paint(paintOverlay))).toHaveLength(1);
    editor.setStage('judge');
    expect(flags(paint(paintOverlay))).toHaveLength(0);
  });
});

test('the rules of the room are drawn for the piece at hand alone, and those it breaks in other strokes', async () => {
  const { editor, paint, drag } = await session();
  const dashes = (calls: Call[]) =>
    calls.filter(({ name }) => name === 'setLineDash').map(({ given }) => String(given[0]));
  const kept = dashes(paint(paintOverlay));
  expect(kept.filter((dash) => dash === '5,3.5').length).toBeGreaterThan(2);
  expect(kept).not.toContain('2,3');
  drag(toDoor.path);
  expect(dashes(paint(paintOverlay))).toContain('2,3');
  editor.select([]);
  expect(dashes(paint(paintOverlay))).not.toContain('5,3.5');
});
