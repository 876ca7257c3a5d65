import { describe, expect, test } from 'vitest';
import { addOpening, addPiece, addReading } from '../../../src/home/edits/add';
import { change } from '../../../src/home/edits/change';
import { setSettings } from '../../../src/home/edits/setSettings';
import { paintOverlay } from '../../../src/views/canvas/overlayLayer';
import { PRINT_INK } from '../../../src/views/canvas/ink';
import { createSceneReader } from '../../../src/views/canvas/scene';
import { drive } from '../../support/driver';
import { box, homeWith, room } from '../../support/homes';
import { recordedContext } from '../../support/recordedContext';

/** A bed for two among readings so few and so uneven that a better place is likely and not sure. */
const doubtful = () =>
  homeWith(
    setSettings({ method: 'kriging' }),
    room(box(0, 0, 5, 4)),
    addOpening({ room: 'r1', kind: 'door', wall: 0, offset: 3.5 }),
    addOpening({ room: 'r1', kind: 'window', wall: 2, offset: 1.5 }),
    addPiece({
      kind: 'bed',
      level: 'l1',
      at: [1, 3],
      size: [1.5, 2],
      uses: [
        { who: 'A', side: 'left', hours: 8 },
        { who: 'B', side: 'right', hours: 8 },
      ],
    }),
    ...READINGS.map(([x, y, value]) => addReading({ level: 'l1', at: [x, y], value })),
  );

const READINGS: [number, number, number][] = [
  [2.35, 1.6, 0.055],
  [4.42, 3.4, 0.116],
  [3.97, 1.81, 0.138],
  [3.04, 2.83, 0.068],
  [1.04, 3.1, 0.14],
  [3.83, 0.86, 0.062],
  [3.63, 3.23, 0.088],
  [0.64, 2.48, 0.157],
  [1.32, 2.19, 0.081],
  [0.86, 1.85, 0.081],
];

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
