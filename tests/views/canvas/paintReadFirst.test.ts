import { describe, expect, test } from 'vitest';
import { addReading } from '../../../src/home/edits/add';
import { change } from '../../../src/home/edits/change';
import { paintOverlay } from '../../../src/views/canvas/overlayLayer';
import { PRINT_INK } from '../../../src/views/canvas/ink';
import { createSceneReader } from '../../../src/views/canvas/scene';
import { drive } from '../../support/driver';
import { doubtful } from '../../support/homes';
import { recordedContext } from '../../support/recordedContext';

async function proposed() {
  const driver = await drive({ home: doubtful() });
  driver.editor.setStage('arrange');
  driver.settle();
  driver.planner.work();
  const read = createSceneReader(driver.editor);
  const ranks = () => {
    const { context, calls } = recordedContext();
    const scene = read('wide');
    paintOverlay({ context, camera: scene.camera, ink: PRINT_INK }, scene);
    return calls
      .filter(({ name, given }) => name === 'fillText' && /^[1-9]$/.test(String(given[0])))
      .map(({ given, fillStyle }) => ({ rank: given[0], colour: fillStyle }));
  };
  return { ...driver, ranks };
}

describe('where to read before deciding', () => {
  test('is on the plan while furniture is arranged, and loses the accent with a stale answer', async () => {
    const { editor, ranks } = await proposed();
    const { proposal } = editor.arranging.state;
    expect([proposal!.decision, proposal!.readAt.length]).toEqual(['measure-both', 4]);
    expect(ranks().map(({ rank }) => rank)).toEqual(['1', '2', '3', '4']);
    expect(ranks().every(({ colour }) => colour === PRINT_INK.accent)).toBe(true);
    editor.run(change({ kind: 'piece', id: 'p1' }, { locked: true }));
    expect(ranks().every(({ colour }) => colour === PRINT_INK.text2)).toBe(true);
    editor.arranging.leave();
    expect(ranks()).toEqual([]);
  });

  test('is kept in sight in the survey once it is gone for, and not before', async () => {
    const { editor, ranks } = await proposed();
    const { readAt } = editor.arranging.state.proposal!;
    editor.setStage('survey');
    expect(ranks()).toEqual([]);
    editor.askNext({ kind: 'given', places: readAt });
    expect(ranks().map(({ rank }) => rank)).toEqual(['1', '2', '3', '4']);
    const { level, at } = readAt[0]!;
    editor.run(addReading({ level, at: [...at], value: 0.1 }));
    expect(ranks()).toHaveLength(3);
  });
});
