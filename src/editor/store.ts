import { applyPatches, enablePatches, produceWithPatches } from 'immer';
import type { Patch } from 'immer';
import type { Edit } from '../home/edits/edit';
import type { Home } from '../home/home';
import type { Problem } from '../home/problem';
import { sameValue } from '../engine/sameValue';

enablePatches();

/** What an edit makes of a home. `patches` is empty where it changes nothing. */
export interface Change {
  home: Home;
  patches: Patch[];
  inverse: Patch[];
}

/** Tries an edit on a home; a refused edit leaves nothing behind. */
export function tryEdit(base: Home, edit: Edit): { change: Change } | { problem: Problem } {
  let problem: Problem | undefined;
  const [home, patches, inverse] = produceWithPatches(base, (draft) => {
    problem = edit.apply(draft as Home) ?? undefined;
  });
  if (problem) return { problem };
  if (sameValue(home, base)) return { change: { home: base, patches: [], inverse: [] } };
  return { change: { home, patches, inverse } };
}

export interface Store {
  readonly home: Home;
  /** Grows with every change of the home. */
  readonly revision: number;
  put(home: Home): void;
  patch(patches: Patch[]): void;
}

/** The one place that holds the home. */
export function createStore(start: Home, changed: () => void): Store {
  let home = start;
  let revision = 0;
  const put = (next: Home) => {
    if (next === home) return;
    home = next;
    revision += 1;
    changed();
  };
  return {
    get home() {
      return home;
    },
    get revision() {
      return revision;
    },
    put,
    patch: (patches) => put(applyPatches(home, patches)),
  };
}
