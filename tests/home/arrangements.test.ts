import fc from 'fast-check';
import { expect, test } from 'vitest';
import { keepArrangement, renameArrangement } from '../../src/home/edits/arrangements';
import { moveBy } from '../../src/home/edits/moveBy';
import { remove } from '../../src/home/edits/remove';
import { takePlaces, useArrangement } from '../../src/home/edits/takePlaces';
import { whatGoesWith } from '../../src/home/edits/whatGoesWith';
import { parseHome } from '../../src/home/file/parse';
import { serialiseHome } from '../../src/home/file/serialise';
import { asFound } from '../../src/home/questions/asFound';
import { differences } from '../../src/home/questions/differences';
import { tryEdit } from '../../src/editor/store';
import { createHistory } from '../../src/editor/history';
import { createStore } from '../../src/editor/store';
import type { Edit } from '../../src/home/edits/edit';
import type { Home, Id } from '../../src/home/home';
import { anyHome } from '../support/anyHome';
import { bedroom } from '../support/homes';

const after = (home: Home, ...edits: Edit[]): Home =>
  edits.reduce((before, edit) => {
    const tried = tryEdit(before, edit);
    if ('problem' in tried) throw new Error(JSON.stringify(tried.problem));
    return tried.change.home;
  }, home);

const SEED = 20261130;
const latest = (home: Home): Id => Object.keys(home.arrangements).at(-1)!;

test('what is kept and used at once changes nothing of the home', () => {
  fc.assert(
    fc.property(anyHome, (home) => {
      const kept = after(home, keepArrangement('Other'));
      expect(after(kept, useArrangement(latest(kept)))).toBe(kept);
    }),
    { numRuns: 40, seed: SEED },
  );
});

test('what is kept, left and used again stands where it stood, with rooms used as they were, whatever happened between', () => {
  fc.assert(
    fc.property(anyHome, (home) => {
      const kept = after(home, keepArrangement('Other'));
      const pieces = Object.keys(home.pieces).map((id) => ({ kind: 'piece' as const, id }));
      const indoors = Object.values(home.rooms).filter(({ use }) => use !== 'grounds');
      const away = after(
        kept,
        moveBy(pieces, [0.5, 0.25]),
        takePlaces(
          [],
          indoors.map(({ id }) => ({ id, use: 'store' })),
        ),
      );
      const back = after(away, useArrangement(latest(kept)));
      expect(back.pieces).toEqual(home.pieces);
      expect(back.rooms).toEqual(home.rooms);
    }),
    { numRuns: 40, seed: SEED },
  );
});

test('each action is one step of history, and undo brings back the very home', () => {
  const store = createStore(bedroom(), () => {});
  const history = createHistory(store, () => {});
  const steps: Edit[] = [
    keepArrangement('Other'),
    renameArrangement('v1', 'By the window'),
    takePlaces([{ id: 'p1', level: 'l1', at: [3, 1.5], angle: 180 }], [{ id: 'r1', use: 'work' }]),
    useArrangement('v1'),
    remove([{ collection: 'arrangements', id: 'v1' }]),
  ];
  const homes = steps.map((edit) => {
    const before = store.home;
    expect(history.run(edit)).toBeNull();
    return before;
  });
  expect(Object.values(store.home.arrangements).map(({ name }) => name)).toEqual(['As found']);
  for (const before of homes.reverse()) {
    history.undo();
    expect(store.home).toEqual(before);
  }
  expect(history.canUndo).toBe(false);
});

test('the file holds what is otherwise: a source off and moved, a room slept in', () => {
  const home = bedroom();
  const marked: Home = {
    ...home,
    sources: {
      s1: {
        id: 's1',
        kind: 'point',
        name: 'Heat pump',
        level: 'l1',
        path: [[1, 1]],
        height: 1,
        falloff: 3,
        origin: 'house',
      },
    },
  };
  const kept = after(
    marked,
    keepArrangement('What if', {
      pieces: [{ id: 'p1', level: 'l1', at: [3, 1.5], angle: 90 }],
      sources: [{ id: 's1', scale: 0.5, path: [[2, 2]] }],
      rooms: [{ id: 'r1', use: 'living' }],
    }),
  );
  const read = parseHome(serialiseHome(kept));
  expect(read.ok && read.home.arrangements).toEqual(kept.arrangements);
  expect(differences(kept, kept.arrangements.v1!)).toEqual({
    pieces: [{ id: 'p1', level: 'l1', at: [3, 1.5], angle: 90 }],
    sources: [{ id: 's1', scale: 0.5, path: [[2, 2]] }],
    rooms: [{ id: 'r1', use: 'living' }],
  });
  const used = after(kept, useArrangement('v1'));
  expect(used.pieces.p1).toMatchObject({ at: [3, 1.5], angle: 90 });
  expect(used.rooms.r1!.use).toBe('living');
  // What a source gives is not the plan's to change.
  expect(used.sources).toEqual(marked.sources);
  // How the furniture stood is kept with the first change, with what the room was used for.
  expect(asFound(used)!.rooms).toEqual([{ id: 'r1', use: 'sleeping' }]);
  expect(after(used, useArrangement(asFound(used)!.id)).rooms).toEqual(marked.rooms);
});

test('a file from before rooms and places of sources were kept has none otherwise', () => {
  const kept = after(bedroom(), keepArrangement('Other'));
  const text = serialiseHome(kept);
  const file = JSON.parse(text) as { arrangements: { rooms?: unknown }[] };
  delete file.arrangements[0]!.rooms;
  const read = parseHome(JSON.stringify(file));
  expect(read.ok && read.home.arrangements.v1!.rooms).toEqual([]);
});

test('a room that goes leaves the arrangements, and they are named beforehand', () => {
  const kept = after(bedroom(), keepArrangement('Other'));
  const room = { kind: 'room' as const, id: 'r1' };
  expect(whatGoesWith(kept, [room]).changes).toContainEqual({ collection: 'arrangements', id: 'v1' });
  expect(after(kept, remove([room])).arrangements.v1!.rooms).toEqual([]);
});
