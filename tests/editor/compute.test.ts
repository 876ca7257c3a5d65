import { describe, expect, it } from 'vitest';
import type { Reading } from '../../src/home/home';
import { change } from '../../src/home/edits/change';
import { addReading } from '../../src/home/edits/add';
import { setSettings } from '../../src/home/edits/setSettings';
import { setTitle } from '../../src/home/edits/setTitle';
import { box, bedroom, homeWith, room } from '../support/homes';
import { drive } from '../support/driver';

describe('the map follows the home', () => {
  it('is asked for once after a burst of edits, and stands with doses and rooms', async () => {
    const { editor, engine, settle, clock } = await drive({ home: bedroom() });
    settle();
    expect(engine.count('assess')).toBe(1);
    expect(editor.results.stale).toBe(false);
    expect(editor.results.assessment?.rooms.map(({ id }) => id)).toEqual(['r1']);
    expect(editor.results.assessment?.pieces.map(({ id }) => id)).toEqual(['p1']);
    for (const value of [0.2, 0.3, 0.5]) editor.run(change({ kind: 'reading', id: 'm1' }, { value }));
    clock.pass(1000);
    expect(engine.count('assess')).toBe(2);
    expect([editor.results.state, editor.results.stale]).toEqual(['running', true]);
    engine.work();
    expect([editor.results.state, editor.results.stale]).toEqual(['idle', false]);
  });

  it('asks nothing for what it does not depend on', async () => {
    const { editor, engine, settle } = await drive({ home: bedroom() });
    settle();
    editor.run(setTitle('Another name'));
    editor.setStage('judge');
    editor.select([{ kind: 'piece', id: 'p1' }]);
    settle();
    expect(engine.count('assess')).toBe(1);
    editor.run(setSettings({ target: 0.2 }));
    settle();
    expect(engine.count('assess')).toBe(2);
  });

  it('a drag that changes nothing asks nothing', async () => {
    const { editor, engine, drag, settle } = await drive({ home: bedroom() });
    editor.setStage('survey');
    settle();
    const { assessment } = editor.results;
    drag(
      [
        [0.5, 0.5],
        [1, 1],
        [0.5, 0.5],
      ],
      { alt: true },
    );
    settle();
    expect(engine.count('assess')).toBe(1);
    expect(editor.results.assessment).toBe(assessment);
    expect(editor.canUndo).toBe(false);
  });

  it('while a reading is dragged: a picture a frame without uncertainty, by the method that was chosen; then everything', async () => {
    const { editor, engine, clock, drag, hover, lift, settle } = await drive({ home: bedroom() });
    editor.setStage('survey');
    settle();
    const whole = editor.results.assessment!;
    drag(
      [
        [0.5, 0.5],
        [0.7, 0.7],
      ],
      { hold: true },
    );
    for (let frame = 1; frame <= 5; frame += 1) {
      hover([0.7 + 0.05 * frame, 0.7]);
      hover([0.72 + 0.05 * frame, 0.7]);
      clock.pass(17);
      engine.work();
    }
    expect(engine.count('picture')).toBe(5);
    expect(engine.count('assess')).toBe(1);
    const shown = editor.results.assessment!;
    expect(editor.results.stale).toBe(true);
    expect(shown.pictures[0]!.variance).toBeNull();
    expect(shown.pictures[0]!.mean).not.toEqual(whole.pictures[0]!.mean);
    expect(shown.fitted).toBe(whole.fitted);
    lift([0.97, 0.7]);
    settle();
    expect(engine.count('assess')).toBe(2);
    expect(editor.results.stale).toBe(false);
    expect(editor.results.assessment!.pictures[0]!.variance).not.toBeNull();
  });

  it('while a marked source is dragged the map follows it, by the fall-off that was found', async () => {
    const plain = bedroom();
    const fridge = {
      id: 's1',
      kind: 'point' as const,
      name: 'Fridge',
      level: 'l1',
      path: [[3.4, 2.6] as const],
      height: 1,
      falloff: 'fit' as const,
      origin: 'house' as const,
    };
    const home = {
      ...plain,
      settings: { ...plain.settings, method: 'source-kriging' as const },
      sources: { s1: fridge },
    };
    const { editor, engine, clock, drag, hover, lift, settle } = await drive({ home });
    editor.setStage('sketch');
    settle();
    const whole = editor.results.assessment!;
    expect(whole.fitted.method).toBe('source-kriging');
    drag(
      [
        [3.4, 2.6],
        [3, 2],
      ],
      { hold: true },
    );
    hover([2.5, 2]);
    clock.pass(17);
    engine.work();
    const shown = editor.results.assessment!;
    expect(engine.count('picture')).toBeGreaterThan(0);
    expect(shown.pictures[0]!.mean).not.toEqual(whole.pictures[0]!.mean);
    expect(shown.fitted).toBe(whole.fitted);
    lift([2.5, 2]);
    settle();
    expect(engine.count('assess')).toBe(2);
  });

  it('what is carried speaks for itself: there is no probe under it', async () => {
    const { editor, drag, hover, lift, settle } = await drive({ home: bedroom() });
    editor.setStage('survey');
    settle();
    hover([0.5, 0.5]);
    expect([editor.carrying, editor.probe?.value]).toEqual([false, expect.any(Number)]);
    drag(
      [
        [0.5, 0.5],
        [1, 1],
      ],
      { hold: true },
    );
    expect([editor.carrying, editor.probe]).toEqual([true, null]);
    lift([1, 1]);
    expect([editor.carrying, editor.probe?.value]).toEqual([false, expect.any(Number)]);
  });

  it('a picture that comes after the hand let go is dropped', async () => {
    const { editor, engine, clock, drag, key, settle } = await drive({ home: bedroom() });
    editor.setStage('survey');
    settle();
    const whole = editor.results.assessment;
    drag(
      [
        [0.5, 0.5],
        [1, 1],
      ],
      { hold: true },
    );
    clock.pass(20);
    key('Escape');
    clock.pass(1000);
    engine.work();
    expect(engine.count('picture')).toBe(1);
    expect([editor.results.assessment, editor.results.stale]).toEqual([whole, false]);
  });

  it('a drag that is given up brings the old map back without asking', async () => {
    const { editor, engine, clock, drag, key, settle } = await drive({ home: bedroom() });
    editor.setStage('survey');
    settle();
    const whole = editor.results.assessment;
    drag(
      [
        [0.5, 0.5],
        [1, 1],
      ],
      { hold: true },
    );
    clock.pass(20);
    engine.work();
    expect(editor.results.assessment).not.toBe(whole);
    key('Escape');
    settle();
    expect(editor.results.assessment).toBe(whole);
    expect([engine.count('assess'), editor.results.stale]).toEqual([1, false]);
  });

  it('while a bed is dragged its dose is live, once a frame, and the map is left alone', async () => {
    const { editor, engine, clock, drag, hover, lift, settle } = await drive({ home: bedroom() });
    settle();
    const before = editor.results.assessment!.pieces[0]!.dose.dose;
    drag(
      [
        [1, 3],
        [2, 2.5],
      ],
      { hold: true },
    );
    const frame = () => {
      clock.pass(17);
      engine.work();
    };
    frame();
    const near = editor.results.live.p1!.dose.dose;
    hover([3, 2]);
    hover([3.5, 2]);
    hover([4, 2]);
    frame();
    expect(engine.count('doses')).toBe(2);
    const far = editor.results.live.p1!.dose.dose;
    expect(near).toBeLessThan(before);
    expect(far).toBeLessThan(near);
    expect(engine.count('picture')).toBe(0);
    lift([4, 2]);
    settle();
    expect(editor.results.live).toEqual({});
    expect(editor.results.assessment!.pieces[0]!.dose.dose).toBeCloseTo(far, 9);
  });

  it('a reply that is no longer current is dropped', async () => {
    const { editor, engine, clock } = await drive({ home: bedroom() });
    clock.pass(1000);
    editor.run(change({ kind: 'reading', id: 'm1' }, { value: 9 }));
    clock.pass(1000);
    expect(engine.count('assess')).toBe(2);
    engine.work();
    const first = editor.results.request!.survey.readings.find(({ id }) => id === 'm1')!;
    expect(first.value).toBe(9);
    expect(editor.results.stale).toBe(false);
  });

  it('a long answer that nobody waits for any more does not hold up the next; a short one is let finish', async () => {
    const survey = (count: number) =>
      homeWith(
        room(box(0, 0, 5, 4)),
        ...Array.from({ length: count }, (_, i) =>
          addReading({ level: 'l1', at: [0.2 + 0.2 * (i % 20), 0.2 + 0.2 * Math.floor(i / 20)], value: 0.1 }),
        ),
      );
    for (const [count, ended] of [
      [12, 0],
      [301, 1],
    ] as const) {
      const { editor, engine, settle, clock } = await drive({ home: survey(count) });
      clock.pass(1000);
      expect(engine.count('assess')).toBe(1);
      editor.run(change({ kind: 'reading', id: 'm1' }, { value: 0.2 }));
      clock.pass(1000);
      expect([engine.count('assess'), engine.ended]).toEqual([2, ended]);
      settle();
      expect([editor.results.state, editor.results.stale]).toEqual(['idle', false]);
      expect(editor.results.request!.survey.readings[0]!.value).toBe(0.2);
    }
  });

  it('cancel ends the worker, keeps the old picture, and the next change starts a fresh one', async () => {
    const { editor, engine, settle, clock } = await drive({ home: bedroom() });
    settle();
    const old = editor.results.assessment;
    editor.run(change({ kind: 'reading', id: 'm1' }, { value: 9 }));
    clock.pass(1000);
    editor.cancelAssessment();
    engine.work();
    expect([engine.ended, editor.results.assessment, editor.results.stale]).toEqual([1, old, true]);
    editor.run(change({ kind: 'reading', id: 'm1' }, { value: 8 }));
    settle();
    expect([engine.started, editor.results.stale]).toEqual([2, false]);
  });

  it('too few readings: no map, and the reason; taking readings brings one', async () => {
    const { editor, settle } = await drive({ home: homeWith(room(box(0, 0, 5, 4))) });
    settle();
    expect(editor.results.problem).toMatchObject({ kind: 'too-few-readings', have: 0 });
    for (const [i, at] of (
      [
        [1, 1],
        [3, 1],
        [2, 3],
      ] as const
    ).entries())
      editor.run(addReading({ level: 'l1', at: [at[0], at[1]], value: 0.1 + 0.1 * i }));
    settle();
    expect(editor.results.problem).toBeNull();
    expect(editor.results.assessment?.pictures.length).toBe(1);
  });

  it('a worker that does not load is a problem with a reason, and the home goes on', async () => {
    const { editor, clock } = await drive({
      home: bedroom(),
      services: {
        engineFactory: () => ({
          post() {},
          end() {},
          listen: (_received, failed) => failed('blocked by policy'),
        }),
      },
    });
    clock.pass(1000);
    expect(editor.results.problem).toEqual({ kind: 'work-failed', detail: 'blocked by policy' });
    expect(editor.results.state).toBe('idle');
    expect(editor.run(setTitle('Still mine'))).toBeNull();
    expect(editor.home.title).toBe('Still mine');
  });

  it('another round is another question', async () => {
    const home = homeWith(
      {
        name: 'Round',
        apply: (draft) => void (draft.rounds.b = { ...draft.rounds.a!, id: 'b', kind: 'supplyOff' }),
      },
      room(box(0, 0, 5, 4)),
      ...[1, 2, 3].map((i) => addReading({ level: 'l1', at: [i, i], value: 0.1 * i, round: 'b' })),
    );
    const { editor, settle } = await drive({ home });
    settle();
    expect(editor.results.problem).toMatchObject({ have: 0 });
    editor.setRound('b');
    settle();
    expect(editor.results.assessment?.evidence.readings).toBe(3);
  });
});

describe('probe', () => {
  it('says the estimate under the pointer with its interval, and nothing outside', async () => {
    const { editor, hover, settle } = await drive({ home: bedroom() });
    settle();
    hover([2, 2]);
    const probe = editor.probe!;
    expect(probe.supported).toBe(true);
    expect(probe.low!).toBeLessThan(probe.value!);
    expect(probe.high!).toBeGreaterThan(probe.value!);
    expect(probe.nearest!).toBeCloseTo(0.2, 2);
    hover([7, 2]);
    expect(editor.probe).toMatchObject({ value: null, reason: 'outside', band: null });
    editor.pointer.leave();
    expect(editor.probe).toBeNull();
  });

  it('the model itself agrees with the picture at the middle of a cell', async () => {
    const { editor, hover, settle } = await drive({ home: bedroom() });
    settle();
    const { step } = editor.results.assessment!.pictures[0]!.grid;
    const middle = [step * (Math.round(2 / step) + 0.5), step * (Math.round(2 / step) + 0.5)] as const;
    hover([...middle]);
    const model = editor.estimateAt(middle);
    expect(editor.probe!.value!).toBeCloseTo(model.value!, 9);
    expect(editor.probe!.high!).toBeCloseTo(model.high!, 9);
    expect(editor.estimateAt(middle, 0.2).high! / editor.estimateAt(middle, 0.2).low!).toBeGreaterThan(
      model.high! / model.low!,
    );
  });
});

describe('arranging', () => {
  it('without a map it says why it cannot', async () => {
    const { editor } = await drive({ home: homeWith(room(box(0, 0, 5, 4))) });
    editor.arranging.ask();
    expect(editor.arranging.state.problem).toEqual({ kind: 'no-map-to-arrange-on' });
  });

  it('proposes, is taken as one step, and one undo takes it back', async () => {
    const { editor, planner, settle } = await drive({ home: bedroom() });
    settle();
    editor.arranging.ask({ cautious: false });
    expect(editor.arranging.state.state).toBe('running');
    planner.work();
    const { proposal } = editor.arranging.state;
    expect(proposal!.after).toBeLessThan(proposal!.before);
    const before = editor.home;
    const placed = proposal!.pieces.find(({ id }) => id === 'p1')!;
    expect(placed.moves).toBe(true);
    expect(editor.arranging.take()).toBeNull();
    expect(editor.home.pieces.p1).toMatchObject({ at: placed.at, angle: placed.angle });
    expect(editor.arranging.state.proposal).toBeNull();
    editor.undo();
    expect(editor.home).toEqual(before);
  });

  it('what was taken is told against how it was found, until undo brings that back', async () => {
    const { editor, planner, settle } = await drive({ home: bedroom() });
    settle();
    editor.arranging.ask();
    planner.work();
    const { proposal } = editor.arranging.state;
    editor.arranging.take();
    settle();
    const since = editor.results.assessment!.sinceFound!;
    expect(since.after).toBeCloseTo(proposal!.after, 9);
    expect(since.odds).toBeCloseTo(proposal!.odds!, 9);
    expect(Object.values(editor.home.arrangements).map(({ name }) => name)).toEqual(['As found']);
    editor.undo();
    settle();
    expect(editor.results.assessment!.sinceFound).toBeNull();
    expect(editor.home.arrangements).toEqual({});
  });

  it('is worked out by itself on entering its stage, once a visit', async () => {
    const { editor, engine, sampler, planner, settle } = await drive({ home: bedroom() });
    editor.setStage('arrange');
    expect(editor.arranging.state.state).toBe('idle');
    settle();
    // The map that is there at once will be drawn anew in seconds: furniture waits for that.
    expect(editor.arranging.state.state).toBe('idle');
    sampler.work();
    engine.work();
    expect(editor.arranging.state.state).toBe('running');
    planner.work();
    expect(editor.arranging.state.proposal).not.toBeNull();
    editor.arranging.leave();
    editor.run(change({ kind: 'reading', id: 'm1' }, { value: 0.5 }));
    settle();
    editor.stopSampling();
    engine.work();
    expect(editor.arranging.state).toMatchObject({ state: 'idle', proposal: null });
    editor.setStage('report');
    editor.setStage('arrange');
    expect(editor.arranging.state.state).toBe('running');
  });

  it('is worked out anew on another round, by the same wishes, once its map is sampled; never by the map of the last round', async () => {
    const home = bedroom();
    const twice = Object.values(home.readings).map((reading): [string, Reading] => [
      `${reading.id}b`,
      { ...reading, id: `${reading.id}b`, round: 'b', value: reading.value / 4 },
    ]);
    const { editor, engine, sampler, planner, settle } = await drive({
      home: {
        ...home,
        readings: { ...home.readings, ...Object.fromEntries(twice) },
        rounds: {
          ...home.rounds,
          b: { id: 'b', name: 'Supply off', kind: 'supplyOff', date: null, note: '' },
        },
      },
    });
    const work = () => {
      sampler.work();
      engine.work();
      planner.work();
    };
    settle();
    work();
    editor.setStage('arrange');
    editor.arranging.ask({ cautious: true });
    work();
    const before = editor.arranging.state.proposal!.before;
    const asked = () => planner.count('arrange');
    const count = asked();
    editor.setRound('b');
    expect(editor.arranging.state).toMatchObject({
      state: 'idle',
      proposal: null,
      wishes: { cautious: true },
    });
    settle();
    // The map that is there at once is not sampled yet.
    expect(editor.results.sampling).not.toBeNull();
    expect(editor.arranging.waits).toBe(true);
    expect(asked()).toBe(count);
    work();
    expect(editor.arranging).toMatchObject({ waits: false, state: { stale: false } });
    expect(asked()).toBe(count + 1);
    expect(editor.arranging.state.proposal!.before).toBeLessThan(before / 2);
  });

  it.each([
    ['nobody uses a piece', { uses: [] }],
    ['every piece is to stay', { locked: true }],
  ])('is not worked out by itself where %s', async (_, patch) => {
    const { editor, settle } = await drive({ home: bedroom() });
    editor.run(change({ kind: 'piece', id: 'p1' }, patch));
    settle();
    editor.setStage('arrange');
    expect(editor.arranging.state.state).toBe('idle');
  });

  it('goes stale when what it was asked of changes, and fresh again when that is undone', async () => {
    const { editor, planner, settle } = await drive({ home: bedroom() });
    settle();
    editor.arranging.ask();
    planner.work();
    editor.run(change({ kind: 'piece', id: 'p1' }, { at: [2.5, 2] }));
    expect(editor.arranging.state.stale).toBe(true);
    expect(editor.arranging.take()).toEqual({ kind: 'proposal-stale' });
    editor.undo();
    expect(editor.arranging.state.stale).toBe(false);
    editor.run(change({ kind: 'reading', id: 'm1' }, { value: 3 }));
    settle();
    expect(editor.arranging.state.stale).toBe(true);
  });

  it('cancel ends the planner and leaves the map’s worker alone', async () => {
    const { editor, engine, planner, settle } = await drive({ home: bedroom() });
    settle();
    editor.arranging.ask();
    editor.arranging.cancel();
    planner.work();
    expect([editor.arranging.state.state, editor.arranging.state.proposal]).toEqual(['idle', null]);
    expect([planner.ended, engine.ended]).toEqual([1, 0]);
  });
});
