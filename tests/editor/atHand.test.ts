import { describe, expect, it } from 'vitest';
import { addOpening, addPiece, addReading } from '../../src/home/edits/add';
import { change } from '../../src/home/edits/change';
import { bedroom, box, homeWith, room } from '../support/homes';
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

/** A mapped bedroom with a door, its bed picked up where furniture is arranged. */
async function mapped() {
  const home = { ...bedroom(), settings: { ...bedroom().settings, method: 'kriging' as const } };
  const driver = await drive({ home });
  driver.settle();
  driver.editor.setStage('arrange');
  driver.planner.work();
  driver.editor.arranging.leave();
  driver.click([1, 2.6]);
  driver.planner.work();
  return driver;
}

describe('the good area', () => {
  it('is asked once for a piece at its angle, and not while it only moves', async () => {
    const { editor, planner, drag, lift, settle } = await mapped();
    const { area } = editor.atHand!;
    expect(area!.least).toBeGreaterThan(0);
    expect(planner.count('good')).toBe(1);
    drag(
      [
        [1, 2.6],
        [2, 2.4],
        [3, 2],
        [3.2, 1.5],
      ],
      { hold: true },
    );
    expect(planner.count('good')).toBe(1);
    expect(editor.atHand!.area).toBe(area);
    lift([3.2, 1.5]);
    settle();
    // The map is worked out again with the piece elsewhere: the same map.
    expect(planner.count('good')).toBe(1);
    expect(editor.atHand!.area).toBe(area);
  });

  it('is asked anew for another angle, and known at once when the piece is turned back', async () => {
    const { editor, planner, key } = await mapped();
    const { area } = editor.atHand!;
    key('r');
    expect(planner.count('good')).toBe(2);
    // The last picture stays until the next is there.
    expect(editor.atHand!.area).toBe(area);
    planner.work();
    expect(editor.atHand!.area).not.toBe(area);
    key('r', { shift: true });
    expect(editor.atHand!.area).toBe(area);
    expect(planner.count('good')).toBe(2);
  });

  it('asks one question at a time while the piece turns: of those that come meanwhile the last', async () => {
    const { editor, planner, key } = await mapped();
    for (let turn = 0; turn < 3; turn++) key('r');
    expect(planner.count('good')).toBe(2);
    planner.work();
    expect(planner.count('good')).toBe(3);
    expect(planner.asks.flatMap((ask) => (ask.ask === 'good' ? [ask.angle] : []))).toEqual([0, 90, 270]);
    expect(editor.atHand!.area).not.toBeNull();
  });

  it('is asked anew when the home or its map is another, and goes with the piece', async () => {
    const { editor, planner, settle } = await mapped();
    editor.run(addReading({ level: 'l1', at: [4.5, 3.5], value: 0.4 }));
    settle();
    expect(planner.count('good')).toBe(2);
    planner.work();
    editor.run(addOpening({ room: 'r1', kind: 'door', wall: 0, offset: 3, width: 0.8 }));
    expect(planner.count('good')).toBe(3);
    editor.select([]);
    expect(editor.atHand).toBeNull();
    planner.work();
    editor.setStage('map');
    editor.select([{ kind: 'piece', id: 'p1' }]);
    expect([editor.atHand, planner.count('good')]).toEqual([null, 3]);
  });

  it('does not hold up an arrangement that is being worked out', async () => {
    const { editor, planner } = await mapped();
    const before = planner.started;
    editor.arranging.ask();
    expect(editor.arranging.state.state).toBe('running');
    editor.run(change({ kind: 'piece', id: 'p1' }, { angle: 90 }));
    expect(editor.arranging.state.state).toBe('running');
    expect(planner.started).toBe(before + 1);
  });
});

describe('the dose of the piece at hand', () => {
  it('is told while it is carried, of where it is', async () => {
    const { editor, drag, clock, engine, lift } = await mapped();
    expect(editor.atHand).toMatchObject({ told: false });
    const before = editor.atHand!.dose!.dose;
    drag(
      [
        [1, 2.6],
        [3, 2.6],
        [4, 2.6],
      ],
      { hold: true },
    );
    clock.pass(20);
    engine.work();
    const { dose, told } = editor.atHand!;
    expect(told).toBe(true);
    expect(dose!.dose).toBeLessThan(before);
    expect(dose).toEqual(editor.results.live.p1!.dose);
    lift([4, 2.6]);
    expect(editor.atHand!.told).toBe(false);
  });

  it('is told at the piece when a key has moved it, before the map is worked out again', async () => {
    const { editor, key, engine, settle } = await mapped();
    const before = editor.atHand!.dose!.dose;
    for (let press = 0; press < 4; press++) key('ArrowRight', { shift: true });
    engine.work();
    const { dose, told } = editor.atHand!;
    expect([told, dose!.dose < before]).toEqual([true, true]);
    settle();
    expect(editor.atHand!.dose!.dose).toBeCloseTo(dose!.dose, 9);
    editor.select([]);
    editor.select([{ kind: 'piece', id: 'p1' }]);
    expect(editor.atHand!.told).toBe(false);
  });
});
