import { describe, expect, it } from 'vitest';
import { addReading } from '../../src/home/edits/add';
import { remove } from '../../src/home/edits/remove';
import { setTitle } from '../../src/home/edits/setTitle';
import { bedroom } from '../support/homes';
import { drive } from '../support/driver';

/** A bedroom that is mapped at once. */
const kriged = () => ({ ...bedroom(), settings: { ...bedroom().settings, method: 'kriging' as const } });

/** A session at the map with the places for the bed worked out. */
async function asked() {
  const driver = await drive({ home: kriged() });
  driver.editor.setStage('map');
  driver.settle();
  driver.editor.askNext({ kind: 'piece', id: 'p1' });
  driver.planner.work();
  return driver;
}

describe('where to read next', () => {
  it('is asked of a worker of its own, and stands with the map that was fitted', async () => {
    const { editor, planner, engine } = await asked();
    expect([planner.count('next'), engine.count('next')]).toEqual([1, 0]);
    expect(editor.next.state).toBe('idle');
    expect(editor.next.answer!.readings.length).toBeGreaterThan(0);
  });

  it('waits for the first map where there is none yet', async () => {
    const { editor, planner, settle } = await drive({ home: kriged() });
    editor.askNext({ kind: 'map' });
    expect(planner.count('next')).toBe(0);
    settle();
    expect(planner.count('next')).toBe(1);
  });

  it('waits for the sources to be sampled where that is under way, since the map will be another', async () => {
    const { editor, planner, engine, sampler, settle } = await drive({ home: bedroom() });
    settle();
    expect(editor.results.sampling).not.toBeNull();
    editor.askNext({ kind: 'map' });
    expect(planner.count('next')).toBe(0);
    sampler.work();
    engine.work();
    expect(editor.results.sampling).toBeNull();
    expect(planner.count('next')).toBe(1);
  });

  it('keeps the place that is picked, by where it is, while the list is worked out anew', async () => {
    const { editor, planner, settle } = await asked();
    editor.pickNext(1);
    const { at } = editor.next.answer!.readings[1]!;
    // Far from the bed: the same places matter.
    editor.run(addReading({ level: 'l1', at: [4.9, 0.2], value: 0.08 }));
    settle();
    planner.work();
    const { picked, answer } = editor.next;
    expect(picked === null ? null : answer!.readings[picked]!.at).toEqual(
      answer!.readings.some((one) => one.at[0] === at[0] && one.at[1] === at[1]) ? at : null,
    );
  });

  it('is stale while the map is, and follows it; what it does not depend on asks nothing', async () => {
    const { editor, planner, settle } = await asked();
    editor.run(setTitle('Another name'));
    settle();
    expect([planner.count('next'), editor.next.stale]).toEqual([1, false]);
    const { at, height } = editor.next.answer!.readings[0]!;
    editor.run(addReading({ level: 'l1', at: [...at], height, value: 0.3 }));
    settle();
    expect([planner.count('next'), editor.next.stale, editor.next.state]).toEqual([2, true, 'running']);
    planner.work();
    expect([editor.next.stale, editor.next.state]).toEqual([false, 'idle']);
    expect(editor.next.answer!.readings.some((one) => one.at[0] === at[0] && one.at[1] === at[1])).toBe(
      false,
    );
  });

  it('goes with what it was for, and when nobody wants it any more', async () => {
    const { editor, settle } = await asked();
    editor.run(remove([{ kind: 'piece', id: 'p1' }]));
    settle();
    expect([editor.next.ask, editor.next.answer]).toEqual([null, null]);
    editor.undo();
    editor.askNext({ kind: 'map' });
    editor.askNext(null);
    expect([editor.next.ask, editor.next.state]).toEqual([null, 'idle']);
  });

  it('a press on a place picks it at the map; in the survey it puts the next reading there, to the centimetre', async () => {
    const { editor, click } = await asked();
    const { at } = editor.next.answer!.readings[1]!;
    click([at[0] + 0.05, at[1] - 0.04]);
    expect(editor.next.picked).toBe(1);
    expect(editor.selection).toEqual([]);
    editor.setStage('survey');
    click([at[0] + 0.05, at[1] - 0.04]);
    expect(editor.readingPlace).toEqual(at);
    editor.setStage('judge');
    editor.pickNext(null);
    click(at as [number, number]);
    expect(editor.next.picked).toBeNull();
  });

  it('has no list while the worker has failed, and says why', async () => {
    const { editor } = await drive({
      home: kriged(),
      services: {
        arrangeFactory: () => {
          throw new Error('no worker');
        },
      },
    }).then((driver) => {
      driver.settle();
      driver.editor.askNext({ kind: 'map' });
      return driver;
    });
    expect(editor.next.problem).toEqual({ kind: 'work-failed', detail: 'no worker' });
    expect(editor.next.state).toBe('idle');
  });
});

describe('places that an answer has named', () => {
  const places = ([1, 2, 3, 4] as const).map((x) => ({
    piece: 'p1',
    when: 'now' as const,
    level: 'l1',
    at: [x, 2] as const,
    height: 0.6,
  }));

  it('are shown without a worker, one less with each that is read, and gone with the last', async () => {
    const { editor, planner, settle } = await drive({ home: kriged() });
    settle();
    editor.askNext({ kind: 'given', places });
    expect(planner.count('next')).toBe(0);
    expect(editor.next.answer!.readings.map(({ at }) => at[0])).toEqual([1, 2, 3, 4]);
    editor.pickNext(1);
    editor.run(addReading({ level: 'l1', at: [2.1, 2], value: 0.2 }));
    settle();
    expect(editor.next.answer!.readings.map(({ at }) => at[0])).toEqual([1, 3, 4]);
    expect(editor.next.picked).toBeNull();
    editor.undo();
    settle();
    expect(editor.next.answer!.readings).toHaveLength(4);
    for (const { at } of places) editor.run(addReading({ level: 'l1', at: [...at], value: 0.2 }));
    settle();
    expect(editor.next).toMatchObject({ ask: null, answer: null });
  });

  it('stay in the list although a reading was there before', async () => {
    const { editor, settle } = await drive({ home: kriged() });
    settle();
    const { level, at } = editor.home.readings.m1!;
    editor.askNext({ kind: 'given', places: [{ ...places[0]!, level, at }] });
    expect(editor.next.answer!.readings).toHaveLength(1);
  });

  it('go with the piece they are about', async () => {
    const { editor, settle } = await drive({ home: kriged() });
    settle();
    editor.askNext({ kind: 'given', places });
    editor.run(remove([{ kind: 'piece', id: 'p1' }]));
    settle();
    expect(editor.next.ask).toBeNull();
  });
});
