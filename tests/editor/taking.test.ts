import { describe, expect, it } from 'vitest';
import { remove } from '../../src/home/edits/remove';
import { problemText } from '../../src/words/problems';
import { answer, dragGhost, furnished, kinds, placed, placeOf, proposed, state } from '../support/proposed';
import { tight } from '../support/homes';

describe('taking an answer that a hand has changed', () => {
  it('takes it as it stands, with the rule that was broken; one undo brings all back', async () => {
    const driver = await proposed();
    const { editor, planner } = driver;
    const { home } = editor;
    editor.arranging.show(1);
    dragGhost(driver, 'p1', [4.2, 1], { alt: true });
    expect(kinds(driver)).toContain('before-door');
    planner.work();
    const wished = answer(driver).pieces;
    expect(editor.arranging.take()).toBeNull();
    for (const { id, level, at, angle } of wished)
      expect(editor.home.pieces[id]).toMatchObject({ level, at, angle });
    expect(Object.values(editor.home.arrangements).map(({ name }) => name)).toEqual(['As found']);
    expect(state(driver)).toMatchObject({ proposal: null, adjusted: null });
    editor.undo();
    expect(editor.home).toEqual(home);
    expect(editor.canUndo).toBe(false);
  });

  it('takes it before it is judged, and what a hand still holds where it is', async () => {
    const driver = await proposed();
    dragGhost(driver, 'p1', [3, 2], { alt: true, hold: true });
    expect(driver.editor.arranging.take()).toBeNull();
    expect(driver.editor.home.pieces.p1!.at).toEqual([3, 2]);
    driver.lift([3, 2]);
    expect(driver.editor.home.pieces.p1!.at).toEqual([3, 2]);
  });

  it('an answer of the planner’s own that the second look finds fault with is refused in words, and nothing moves', async () => {
    const driver = await proposed(furnished());
    const { editor } = driver;
    answer(driver).faults.push({ piece: 'p1', rule: 'door' });
    const { home } = editor;
    const problem = editor.arranging.take()!;
    expect(problem).toEqual({ kind: 'places-faulty', faults: [{ piece: 'Bed', room: '', rule: 'door' }] });
    expect(problemText(problem)).toContain('Bed: it would stand in the way of a door.');
    expect(editor.home).toBe(home);
    expect(state(driver).proposal).not.toBeNull();
  });
});

it('a place of the planner’s own that breaks a rule it did not name is refused by the names of what is concerned', async () => {
  const driver = await proposed(furnished());
  const { editor } = driver;
  const { home } = editor;
  // As an older planner might have answered.
  placed(driver, 'p1').at = [4, 3];
  const problem = editor.arranging.take()!;
  expect(problem).toMatchObject({ kind: 'rules-broken', piece: 'Bed' });
  expect(problemText(problem)).toMatch(/^Bed cannot stand there any more\. .*It would stand on Desk\./);
  expect(editor.home).toBe(home);
});

describe('an answer for which something is given up', () => {
  it('is looked at and taken in one step with what is given up; one undo brings all back', async () => {
    const driver = await proposed(tight());
    const { editor } = driver;
    const { home } = editor;
    const { relaxed } = state(driver).proposal!;
    expect(relaxed!.changes).toEqual([{ kind: 'strip', piece: 'p1', side: 'foot', from: 0.75, to: 0.6 }]);
    editor.arranging.show('relaxed');
    expect(answer(driver)).toBe(relaxed!.answer);
    expect(editor.arranging.take()).toBeNull();
    expect(editor.home.pieces.p1).toMatchObject({
      ...placeOf(relaxed!.answer.pieces[0]!),
      access: { ...home.pieces.p1!.access, foot: 0.6 },
    });
    editor.undo();
    expect(editor.home).toEqual(home);
    expect(editor.canUndo).toBe(false);
  });

  it('is judged by what it asks for, on the page as in the worker', async () => {
    const driver = await proposed(tight());
    const { editor, planner } = driver;
    editor.arranging.show('relaxed');
    expect(placed(driver, 'p1').angle).toBe(270);
    editor.select([{ kind: 'piece', id: 'p1' }]);
    driver.key('ArrowUp');
    expect(kinds(driver)).toEqual([]);
    planner.work();
    expect([kinds(driver), answer(driver).faults]).toEqual([[], []]);
    const { at } = placed(driver, 'p1');
    expect(editor.arranging.take()).toBeNull();
    expect(editor.home.pieces.p1).toMatchObject({ at, access: { foot: 0.6 } });
  });

  it('is not to be had where nothing is given up', async () => {
    const driver = await proposed();
    driver.editor.arranging.show('relaxed');
    expect(state(driver).shown).toBe(0);
  });
});

describe('the search under way', () => {
  it('tells the least dose met so far', async () => {
    const driver = await proposed();
    const { editor, planner } = driver;
    const told: (number | null)[] = [];
    editor.arranging.ask();
    editor.subscribe('proposal', () => told.push(state(driver).least));
    expect(state(driver).least).toBeNull();
    planner.work();
    const met = told.filter((least) => least !== null);
    expect(met.length).toBeGreaterThan(0);
    expect(met).toEqual(met.toSorted((a, b) => b - a));
    // The planned dose: medians on the planner's own cells.
    expect(met.at(-1)! / state(driver).proposal!.after).toBeGreaterThan(0.9);
    expect(met.at(-1)! / state(driver).proposal!.after).toBeLessThan(1.1);
  });
});

it('fault: a stale answer was told with two homes. It keeps the one that it was asked of', async () => {
  const driver = await proposed(furnished());
  const { editor } = driver;
  const { home } = editor;
  expect(state(driver)).toMatchObject({ stale: false, askedOf: home });
  editor.run(remove([{ kind: 'piece', id: 'p2' }]));
  expect(state(driver).stale).toBe(true);
  expect(state(driver).askedOf).toBe(home);
  editor.arranging.leave();
  expect(state(driver).askedOf).toBeNull();
});
