import { describe as group, expect, it } from 'vitest';
import { addOpening } from '../../../src/home/edits/add';
import { tryEdit } from '../../../src/editor/store';
import type { Editor } from '../../../src/editor/editor';
import { describe } from '../../../src/views/canvas/describe';
import { drive } from '../../support/driver';
import { bedroom } from '../../support/homes';

const heard = (editor: Editor) => {
  const { home, selection, atHand, results, arranging } = editor;
  return describe({ editor, home, selection, atHand, results, proposal: arranging.state });
};

/** A mapped bedroom with a door that opens into it, its bed chosen where furniture is arranged. */
async function session() {
  const made = tryEdit(bedroom(), addOpening({ room: 'r1', kind: 'door', wall: 0, offset: 3, width: 0.8 }));
  if ('problem' in made) throw new Error(made.problem.kind);
  const { home } = made.change;
  const driver = await drive({ home: { ...home, settings: { ...home.settings, method: 'kriging' } } });
  driver.settle();
  driver.editor.setStage('arrange');
  driver.settle();
  driver.planner.work();
  return driver;
}

const DOSE = /^Bed: [\d.]+ µT·h \([\d.]+–[\d.]+\)\. /;

group('what is heard of a piece that a key moves', () => {
  it('is its name while it is only chosen', async () => {
    const { editor } = await session();
    editor.arranging.leave();
    expect(heard(editor)).toBe('Nothing selected');
    editor.select([{ kind: 'piece', id: 'p1' }]);
    expect(heard(editor)).toBe('Bed selected');
  });

  it('is its dose, and every rule it breaks, once the dose is worked out', async () => {
    const { editor, key, settle } = await session();
    editor.arranging.leave();
    editor.select([{ kind: 'piece', id: 'p1' }]);
    for (let i = 0; i < 4; i++) key('ArrowRight', { shift: true });
    for (let i = 0; i < 3; i++) key('ArrowDown', { shift: true });
    settle();
    expect(heard(editor)).toMatch(DOSE);
    expect(heard(editor)).toContain('The door would strike it.');
  });

  it('is not said before the dose is that of the place: a ghost waits for the planner', async () => {
    const { editor, key, planner } = await session();
    const ghost = editor.arranging.state.proposal!.pieces.find(({ moves }) => moves)!;
    editor.select([{ kind: 'piece', id: ghost.id }]);
    key('ArrowRight', { shift: true });
    expect(heard(editor)).toBeNull();
    planner.work();
    expect(heard(editor)).toMatch(DOSE);
  });

  it('says that no rule is broken where none is', async () => {
    const { editor, key, settle } = await session();
    editor.arranging.leave();
    editor.select([{ kind: 'piece', id: 'p1' }]);
    key('ArrowRight');
    key('ArrowLeft');
    settle();
    expect(editor.broken).toEqual({});
    expect(heard(editor)).toMatch(/\)\. It breaks no rule there\.$/);
  });

  it('is nothing new while a hand carries it', async () => {
    const { editor, drag, lift } = await session();
    editor.arranging.leave();
    const { at } = editor.home.pieces.p1!;
    drag(
      [
        [at[0], at[1]],
        [at[0] + 0.5, at[1]],
        [at[0] + 1, at[1]],
      ],
      { hold: true },
    );
    expect(heard(editor)).toBeNull();
    lift([at[0] + 1, at[1]]);
    expect(heard(editor)).toBe('Bed selected');
  });
});
