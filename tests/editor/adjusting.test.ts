import { describe, expect, it } from 'vitest';
import { change } from '../../src/home/edits/change';
import { setTitle } from '../../src/home/edits/setTitle';
import { placesShown } from '../../src/editor/placesShown';
import { shownAnswer } from '../../src/editor/shownAnswer';
import type { Point } from '../../src/home/home';
import {
  answer,
  dragGhost,
  furnished,
  kinds,
  placed,
  placeOf,
  proposed,
  state,
  upstairs,
} from '../support/proposed';

describe('a ghost under the hand', () => {
  it('goes where it is dragged, up to the walls; the home stays, and all follow what is shown', async () => {
    const driver = await proposed();
    const { editor, planner } = driver;
    const { home, canUndo } = editor;
    const told: boolean[] = [];
    editor.subscribe('proposal', () => told.push(editor.canUndo));
    const was = placed(driver, 'p1');
    expect([was.at, was.angle]).toEqual([[4, 1.497], 270]);
    // Four centimetres short of the wall behind its head.
    dragGhost(driver, 'p1', [3.96, 2]);
    expect(placed(driver, 'p1')).toMatchObject({
      id: 'p1',
      level: 'l1',
      angle: 270,
      room: 'r1',
      moves: true,
    });
    expect(placed(driver, 'p1').at[0]).toBeCloseTo(4, 9);
    expect(placed(driver, 'p1').at[1]).not.toBeCloseTo(was.at[1], 1);
    expect(editor.home).toBe(home);
    expect([canUndo, told.at(-1)]).toEqual([false, true]);
    expect(editor.selection).toEqual([{ kind: 'piece', id: 'p1' }]);
    expect(state(driver).adjusted).toMatchObject({ byHand: ['p1'], judging: true });
    expect(placesShown(home, state(driver))).toEqual([
      { id: 'p1', ...placeOf(placed(driver, 'p1')) },
      { id: 'p2', ...placeOf(placed(driver, 'p2')) },
    ]);
    planner.work();
    expect(state(driver).adjusted!.judging).toBe(false);
    const now = placed(driver, 'p1');
    expect(now.after!.dose).not.toBe(was.after!.dose);
    expect(now.before).toEqual(was.before);
  });

  it('answers to a pen and within a finger’s reach, before the piece under it', async () => {
    for (const [type, off] of [
      ['pen', 0.04],
      ['touch', 0.2],
    ] as const) {
      const driver = await proposed(furnished([1, 0.35]));
      const { at } = placed(driver, 'p1');
      // Just outside its long side, at 100 CSS pixels a metre.
      const from: Point = [at[0], at[1] + 0.7 + off];
      driver.drag([from, [from[0] - 0.5, from[1]], [from[0] - 1, from[1]]], { type, alt: true });
      expect(placed(driver, 'p1').at[0]).toBeCloseTo(at[0] - 1, 9);
      expect(driver.editor.home.pieces.p1!.at).toEqual([1, 3]);
    }
  });

  it('is hovered and selected like a piece', async () => {
    const { editor, ...driver } = await proposed();
    const { at } = shownAnswer(editor.arranging.state)!.pieces[0]!;
    driver.hover(at);
    expect([editor.hover, editor.cursor]).toEqual([{ kind: 'piece', id: 'p1' }, 'pointer']);
    driver.click(at);
    expect(editor.selection).toEqual([{ kind: 'piece', id: 'p1' }]);
    expect(editor.overlay.filter(({ mark }) => mark === 'handle')).toMatchObject([{ role: 'turn' }]);
  });

  it('is turned by its handle and by R, and moved by arrows', async () => {
    const driver = await proposed();
    const { editor, click, drag, key } = driver;
    const { home } = editor;
    click(placed(driver, 'p1').at);
    const handle = editor.overlay.find((mark) => mark.mark === 'handle')!;
    const { at } = placed(driver, 'p1');
    drag([handle.at, [at[0] + 0.9, at[1] + 0.9], [at[0], at[1] + 1.4]]);
    expect(placed(driver, 'p1')).toMatchObject({ at, angle: 0 });
    key('r', { shift: true });
    expect(placed(driver, 'p1').angle).toBe(270);
    key('ArrowLeft');
    key('ArrowUp', { shift: true });
    expect(placed(driver, 'p1').at[0]).toBeCloseTo(at[0] - 0.05, 9);
    expect(placed(driver, 'p1').at[1]).toBeCloseTo(at[1] + 0.5, 9);
    expect(editor.home).toBe(home);
  });

  it('says at once which rules it breaks, among the other ghosts and not among the places they have now', async () => {
    const driver = await proposed();
    const { planner } = driver;
    dragGhost(driver, 'p1', [4.2, 1], { alt: true, hold: true });
    expect(planner.count('judge')).toBe(1);
    expect(kinds(driver)).toContain('before-door');
    driver.lift([4.2, 1], { alt: true });
    // Where the desk stands now there will be none.
    dragGhost(driver, 'p1', [1, 1], { alt: true });
    expect(kinds(driver)).not.toContain('overlap');
    // Where it will stand the bed is in its way.
    dragGhost(driver, 'p1', [4, 3], { alt: true });
    expect(placed(driver, 'p1').breaks).toContainEqual({ kind: 'overlap', with: 'p2' });
    planner.work();
    expect(placed(driver, 'p1').breaks).toContainEqual({ kind: 'overlap', with: 'p2' });
    expect(placed(driver, 'p2').breaks).toContainEqual({ kind: 'overlap', with: 'p1' });
    expect(answer(driver).faults.length).toBeGreaterThan(0);
  });

  it('asks the worker for the newest place only, however many it was carried over', async () => {
    const driver = await proposed();
    const { planner } = driver;
    const { at } = placed(driver, 'p1');
    const way = Array.from({ length: 20 }, (_, i): Point => [at[0] - 0.05 * (i + 1), at[1]]);
    driver.drag([at, ...way], { alt: true, hold: true });
    expect(planner.count('judge')).toBe(1);
    const doses = placed(driver, 'p1').after;
    planner.work();
    // The first place on the way, and the last.
    expect(planner.count('judge')).toBe(2);
    expect(state(driver).adjusted!.judging).toBe(false);
    expect(placed(driver, 'p1').after).not.toEqual(doses);
    driver.lift(way.at(-1)!, { alt: true });
    planner.work();
    expect(planner.count('judge')).toBe(2);
    // One worker plans and judges; the other has the area of the piece at hand.
    expect([planner.started, planner.ended]).toEqual([2, 0]);
  });
});

describe('a hand that changes its mind', () => {
  it('Escape while dragging leaves the answer as it was, and asks nothing more', async () => {
    const driver = await proposed();
    const { editor, planner } = driver;
    dragGhost(driver, 'p1', [3.5, 2]);
    planner.work();
    const before = state(driver).adjusted;
    dragGhost(driver, 'p1', [2, 2], { hold: true });
    driver.key('Escape');
    expect(state(driver).adjusted).toBe(before);
    driver.lift([2, 2]);
    expect(state(driver).adjusted).toBe(before);
    planner.work();
    expect(state(driver).adjusted).toBe(before);
    editor.undo();
    expect(state(driver).adjusted).toBeNull();
  });

  it('undo takes back one step at a time and only then what was done to the home; redo brings each again', async () => {
    const driver = await proposed();
    const { editor, planner } = driver;
    editor.run(setTitle('Another name'));
    const named = editor.home;
    dragGhost(driver, 'p1', [3.5, 2]);
    planner.work();
    const first = state(driver).adjusted!;
    driver.key('ArrowLeft');
    planner.work();
    const second = state(driver).adjusted!;
    const asked = planner.count('judge');
    driver.key('z', { command: true });
    expect(state(driver).adjusted).toBe(first);
    driver.key('z', { command: true });
    expect([state(driver).adjusted, editor.home]).toEqual([null, named]);
    driver.key('z', { command: true });
    expect(editor.home.title).not.toBe('Another name');
    driver.key('y', { command: true });
    expect(editor.home).toEqual(named);
    driver.key('y', { command: true });
    driver.key('y', { command: true });
    expect(state(driver).adjusted).toBe(second);
    expect(editor.canRedo).toBe(false);
    // What they are worth is known.
    expect(planner.count('judge')).toBe(asked);
  });

  it('what was done to the home since is taken back before', async () => {
    const driver = await proposed();
    const { editor } = driver;
    dragGhost(driver, 'p1', [3.5, 2]);
    const adjusted = state(driver).adjusted;
    editor.run(setTitle('Another name'));
    editor.undo();
    expect([editor.home.title, state(driver).adjusted]).toEqual(['Made up', adjusted]);
    editor.undo();
    expect(state(driver).adjusted).toBeNull();
  });

  it('“back to the planner’s place” undoes all of it, and is itself undone', async () => {
    const driver = await proposed();
    const { editor } = driver;
    const planned = answer(driver);
    dragGhost(driver, 'p1', [3.5, 2]);
    dragGhost(driver, 'p2', [2.5, 3.65]);
    const adjusted = state(driver).adjusted;
    expect(adjusted!.byHand).toEqual(['p1', 'p2']);
    editor.arranging.backToPlanner();
    expect(answer(driver)).toBe(planned);
    editor.undo();
    expect(state(driver).adjusted).toMatchObject({ byHand: ['p1', 'p2'] });
    // A piece that is put back by hand is no longer by hand.
    editor.redo();
    driver.click(placed(driver, 'p1').at);
    driver.key('ArrowLeft');
    driver.key('ArrowRight');
    expect(answer(driver)).toBe(planned);
  });

  it('another answer, a new one, or none: the change is gone', async () => {
    const driver = await proposed();
    const { editor, planner } = driver;
    dragGhost(driver, 'p1', [3.5, 2]);
    editor.arranging.show(1);
    expect([state(driver).adjusted, editor.canUndo]).toEqual([null, false]);
    editor.arranging.show(0);
    expect([state(driver).adjusted, editor.canUndo]).toEqual([null, false]);
    dragGhost(driver, 'p1', [3.5, 2]);
    editor.arranging.ask({ cautious: true });
    planner.work();
    expect([state(driver).adjusted, editor.canUndo]).toEqual([null, false]);
    dragGhost(driver, 'p1', [3.5, 2]);
    editor.arranging.leave();
    planner.work();
    expect([state(driver).adjusted, editor.canUndo]).toEqual([null, false]);
  });
});

describe('which pieces a hand changes the answer of', () => {
  it('one that stays as well, under the keys and under the pointer', async () => {
    const driver = await proposed(furnished([4.4, 3.65], 0));
    const { editor, click, key } = driver;
    const home = editor.home;
    expect(placed(driver, 'p2').moves).toBe(false);
    click([4.4, 3.65]);
    key('ArrowLeft');
    expect(editor.home).toBe(home);
    expect(placed(driver, 'p2')).toMatchObject({ moves: true, at: [4.35, 3.65] });
    editor.undo();
    driver.drag([
      [4.4, 3.65],
      [3.5, 3.4],
      [3, 3.65],
    ]);
    expect(editor.home).toBe(home);
    expect(placed(driver, 'p2').at[0]).toBeCloseTo(3, 1);
    expect([state(driver).adjusted?.byHand, state(driver).stale]).toEqual([['p2'], false]);
  });

  it('none while the home has changed since, while another is worked out, or elsewhere', async () => {
    const driver = await proposed();
    const { editor } = driver;
    const { at } = placed(driver, 'p1');
    editor.run(change({ kind: 'piece', id: 'p2' }, { at: [2.5, 0.35] }));
    driver.hover(at);
    expect(editor.hover).not.toEqual({ kind: 'piece', id: 'p1' });
    editor.undo();
    driver.hover(at);
    expect(editor.hover).toEqual({ kind: 'piece', id: 'p1' });
    editor.setStage('sketch');
    driver.hover(at);
    expect(editor.hover).not.toEqual({ kind: 'piece', id: 'p1' });
    editor.setStage('arrange');
    editor.arranging.ask();
    dragGhost(driver, 'p1', [3, 2]);
    expect(state(driver).adjusted).toBeNull();
  });

  it('one whose place is on another level than the one shown is the home’s here, and the answer’s there', async () => {
    const driver = await proposed(upstairs());
    const { editor, click, key } = driver;
    const [here, there] = [editor.view.level, 'l2'];
    expect(placed(driver, 'p1')).toMatchObject({ level: there, moves: true });
    click([1, 3]);
    expect(editor.selection).toEqual([{ kind: 'piece', id: 'p1' }]);
    // The handles of the piece that is seen, to shape it as well.
    expect(editor.overlay.filter(({ mark }) => mark === 'handle')).toHaveLength(5);
    editor.setLevel(there);
    const { at } = placed(driver, 'p1');
    driver.drag([at, [at[0] - 0.5, at[1]], [at[0] - 1, at[1]]], { alt: true });
    key('ArrowLeft');
    expect(placed(driver, 'p1')).toMatchObject({ level: there });
    expect(placed(driver, 'p1').at[0]).toBeCloseTo(at[0] - 1.05, 9);
    driver.planner.work();
    expect(editor.arranging.take()).toBeNull();
    expect(editor.home.pieces.p1!.level).toBe(there);
    expect(here).not.toBe(there);
  });
});
