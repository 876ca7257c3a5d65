import type { Patch } from 'immer';
import type { Edit } from '../home/edits/edit';
import type { Home } from '../home/home';
import type { Problem } from '../home/problem';
import { sameValue } from '../engine/sameValue';
import { tryEdit } from './store';
import type { Store } from './store';

interface Step {
  name: string;
  patches: Patch[];
  inverse: Patch[];
}

interface Gesture extends Step {
  start: Home;
}

export interface History {
  /** Makes a step of its own, or joins the open gesture. */
  run(edit: Edit): Problem | null;
  /** Within a gesture: applies the edit to the home as it was at the mark, in place of all since. */
  redraw(edit: Edit): Problem | null;
  mark(name: string): void;
  commit(): void;
  bail(): void;
  undo(): void;
  redo(): void;
  /** Forgets everything: another home was opened. */
  clear(): void;
  readonly open: boolean;
  /** The last step that stands, to tell whether others have come since; nothing else is known of it. */
  readonly last: unknown;
  readonly canUndo: boolean;
  readonly canRedo: boolean;
}

/** More steps than anybody takes back by hand; old ones are let go so that a long session does not grow without end. */
const LONGEST = 500;

/** Steps back and forth over the store. `committed` is told whenever a home stands that may be kept. */
export function createHistory(store: Store, committed: () => void): History {
  let done: Step[] = [];
  let undone: Step[] = [];
  let gesture: Gesture | null = null;

  const push = (step: Step) => {
    done.push(step);
    if (done.length > LONGEST) done = done.slice(-LONGEST);
    undone = [];
  };

  const commit = () => {
    if (!gesture) return;
    const { start, name, patches, inverse } = gesture;
    gesture = null;
    if (sameValue(start, store.home)) store.put(start);
    else {
      push({ name, patches, inverse });
      committed();
    }
  };

  const bail = () => {
    if (!gesture) return;
    const { start } = gesture;
    gesture = null;
    store.put(start);
  };

  return {
    run(edit) {
      const tried = tryEdit(store.home, edit);
      if ('problem' in tried) return tried.problem;
      const { home, patches, inverse } = tried.change;
      if (patches.length === 0) return null;
      if (gesture) {
        gesture.patches = [...gesture.patches, ...patches];
        gesture.inverse = [...inverse, ...gesture.inverse];
        store.put(home);
      } else {
        push({ name: edit.name, patches, inverse });
        store.put(home);
        committed();
      }
      return null;
    },
    redraw(edit) {
      if (!gesture) throw new Error('redraw needs an open gesture');
      const tried = tryEdit(gesture.start, edit);
      if ('problem' in tried) return tried.problem;
      gesture.patches = tried.change.patches;
      gesture.inverse = tried.change.inverse;
      store.put(tried.change.home);
      return null;
    },
    mark(name) {
      commit();
      gesture = { name, start: store.home, patches: [], inverse: [] };
    },
    commit,
    bail,
    undo() {
      if (gesture) return bail();
      const step = done.pop();
      if (!step) return;
      undone.push(step);
      store.patch(step.inverse);
      committed();
    },
    redo() {
      if (gesture) return;
      const step = undone.pop();
      if (!step) return;
      done.push(step);
      store.patch(step.patches);
      committed();
    },
    clear() {
      gesture = null;
      done = [];
      undone = [];
    },
    get open() {
      return gesture !== null;
    },
    get last() {
      return done.at(-1) ?? null;
    },
    get canUndo() {
      return gesture !== null || done.length > 0;
    },
    get canRedo() {
      return gesture === null && undone.length > 0;
    },
  };
}
