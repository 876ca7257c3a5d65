import { describe, expect, it } from 'vitest';
import { random } from '../../src/engine/algebra/random';
import { createHistory } from '../../src/editor/history';
import { createStore } from '../../src/editor/store';
import { addPiece, addReading, addRoom } from '../../src/home/edits/add';
import { moveBy } from '../../src/home/edits/moveBy';
import { remove } from '../../src/home/edits/remove';
import type { Edit } from '../../src/home/edits/edit';
import type { Home } from '../../src/home/home';
import { newHome } from '../../src/home/newHome';

const rename = (title: string): Edit => ({ name: 'Rename', apply: (draft) => void (draft.title = title) });

function begin(home = newHome('Test home')) {
  let kept = 0;
  const store = createStore(home, () => {});
  const history = createHistory(store, () => (kept += 1));
  return { store, history, kept: () => kept };
}

describe('history', () => {
  it('an edit that changes nothing leaves no trace', () => {
    const { store, history, kept } = begin();
    expect(history.run(rename('Test home'))).toBeNull();
    expect(
      history.run({ name: 'Same', apply: (draft) => void (draft.settings.night = ['22:00', '07:00']) }),
    ).toBeNull();
    expect([store.revision, history.canUndo, kept()]).toEqual([0, false, 0]);
  });

  it('a refused edit leaves the home and the history as they were', () => {
    const { store, history } = begin();
    const before = store.home;
    const problem = history.run({
      name: 'Half done',
      apply(draft) {
        draft.title = 'changed';
        return { kind: 'not-there', collection: 'rooms', id: 'r9' };
      },
    });
    expect(problem).toEqual({ kind: 'not-there', collection: 'rooms', id: 'r9' });
    expect(store.home).toBe(before);
    expect(history.canUndo).toBe(false);
  });

  it('a gesture is one step, whatever happened in between', () => {
    const { store, history, kept } = begin();
    history.mark('Drag');
    for (const title of ['a', 'b', 'c']) history.redraw(rename(title));
    history.run({ name: 'Turn', apply: (draft) => void (draft.north = 30) });
    expect(kept()).toBe(0);
    history.commit();
    expect([store.home.title, store.home.north, kept()]).toEqual(['c', 30, 1]);
    history.undo();
    expect([store.home.title, store.home.north, history.canUndo]).toEqual(['Test home', 0, false]);
    history.redo();
    expect([store.home.title, store.home.north]).toEqual(['c', 30]);
  });

  it('a gesture that ends where it began leaves no trace', () => {
    const { store, history, kept } = begin();
    const before = store.home;
    history.mark('Drag');
    history.redraw(rename('away'));
    history.redraw(rename('Test home'));
    history.commit();
    expect(store.home).toBe(before);
    expect([history.canUndo, kept()]).toEqual([false, 0]);
  });

  it('bail gives back the very home of the mark', () => {
    const { store, history } = begin();
    const before = store.home;
    history.mark('Drag');
    history.redraw(rename('away'));
    history.bail();
    expect(store.home).toBe(before);
    expect([history.canUndo, history.canRedo]).toEqual([false, false]);
  });

  it('undo within a gesture takes the gesture back and nothing else', () => {
    const { store, history } = begin();
    history.run(rename('first'));
    history.mark('Drag');
    history.redraw(rename('second'));
    history.undo();
    expect([store.home.title, history.canUndo]).toEqual(['first', true]);
  });

  it('a new edit forgets what was undone', () => {
    const { history } = begin();
    history.run(rename('one'));
    history.undo();
    history.run(rename('two'));
    expect(history.canRedo).toBe(false);
  });

  it.each([1, 2, 3, 4, 5, 6, 7, 8])(
    'seed %i: any mix of edits, undo and redo equals a replay of the edits that stand',
    (seed) => {
      const chance = random(seed);
      const { store, history } = begin();
      const homes: Home[] = [store.home];
      let at = 0;
      for (let step = 0; step < 120; step += 1) {
        const dice = chance.next();
        if (dice < 0.2) {
          history.undo();
          at = Math.max(0, at - 1);
        } else if (dice < 0.35) {
          history.redo();
          at = Math.min(homes.length - 1, at + 1);
        } else {
          const before = store.home;
          const asGesture = chance.next() < 0.3;
          const edit = someEdit(store.home, chance);
          if (asGesture) {
            history.mark(edit.name);
            history.redraw(rename(`passing ${step}`));
            history.redraw(edit);
            if (chance.next() < 0.3) history.bail();
            else history.commit();
          } else history.run(edit);
          if (store.home !== before) {
            homes.length = at + 1;
            homes.push(store.home);
            at += 1;
          }
        }
        expect(store.home, `step ${step}`).toEqual(homes[at]);
      }
      while (history.canUndo) history.undo();
      expect(store.home).toEqual(newHome('Test home'));
      while (history.canRedo) history.redo();
      expect(store.home).toEqual(homes.at(-1));
    },
  );
});

type Chance = ReturnType<typeof random>;

function someEdit(home: Home, chance: Chance): Edit {
  const at = (): [number, number] => [
    Math.round(chance.next() * 80) / 10,
    Math.round(chance.next() * 60) / 10,
  ];
  const rooms = Object.keys(home.rooms);
  const pieces = Object.keys(home.pieces);
  const pick = (ids: string[]) => ids[Math.floor(chance.next() * ids.length)]!;
  const dice = chance.next();
  if (dice < 0.2) {
    const [x, y] = at();
    const outline: [number, number][] = [
      [x, y],
      [x + 3, y],
      [x + 3, y + 4],
      [x, y + 4],
    ];
    return addRoom({ level: 'l1', outline });
  }
  if (dice < 0.4) return addReading({ level: 'l1', at: at(), value: 0.05 + chance.next() });
  if (dice < 0.55) return addPiece({ kind: 'bed', level: 'l1', at: at() });
  if (dice < 0.7 && pieces.length > 0) return moveBy([{ kind: 'piece', id: pick(pieces) }], [0.1, 0]);
  if (dice < 0.8 && rooms.length > 0) return remove([{ kind: 'room', id: pick(rooms) }]);
  if (dice < 0.9) return { name: 'Nothing', apply: () => undefined };
  return rename(`Home ${Math.floor(chance.next() * 3)}`);
}
