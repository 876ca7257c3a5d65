import type { Problem } from '../../home/problem';

interface Saving {
  state: 'saved' | 'saving' | 'failed';
  at: number | null;
  problem: Problem | null;
}

export interface Autosave {
  readonly saving: Saving;
  /** Something changed: save it soon. */
  touch(): void;
  /** Save now whatever waits; settles when it is written or has failed. */
  flush(): Promise<void>;
  /** Forget what waits: the home it belongs to is gone. */
  drop(): void;
}

/** Long enough to gather the strokes of a word, short enough that a crash costs a sentence. */
const DELAY = 400;

/** Turns what a refused write says into a problem with a sentence of its own. */
export function storageProblem(reason: unknown): Problem {
  const error = reason as { name?: string; message?: string; inner?: { name?: string } };
  const full = error?.name === 'QuotaExceededError' || error?.inner?.name === 'QuotaExceededError';
  return full
    ? { kind: 'storage-full' }
    : { kind: 'storage-refused', detail: error?.message ?? String(reason) };
}

/** Writes one after another, never two at once, and never less than the last touch. */
export function createAutosave(
  write: () => Promise<void>,
  schedule: (task: () => void, milliseconds: number) => () => void,
  clock: () => number,
  changed: () => void,
): Autosave {
  let saving: Saving = { state: 'saved', at: null, problem: null };
  let callOff: (() => void) | null = null;
  let waiting = false;
  let writing: Promise<void> = Promise.resolve();

  const set = (next: Saving) => {
    saving = next;
    changed();
  };

  const save = async () => {
    if (!waiting) return;
    waiting = false;
    set({ ...saving, state: 'saving' });
    try {
      await write();
      if (!waiting) set({ state: 'saved', at: clock(), problem: null });
    } catch (reason) {
      // What could not be written still waits; the next touch or flush tries again.
      waiting = true;
      set({ state: 'failed', at: saving.at, problem: storageProblem(reason) });
    }
  };

  const gather = () => {
    callOff?.();
    callOff = schedule(() => {
      callOff = null;
      if (!waiting) return;
      void flush();
      gather();
    }, DELAY);
  };

  const flush = () => {
    writing = writing.then(save);
    return writing;
  };

  return {
    get saving() {
      return saving;
    },
    touch() {
      waiting = true;
      // From this moment what is on the screen is not what is kept.
      if (saving.state === 'saved') set({ ...saving, state: 'saving' });
      if (callOff) return;
      // The first is written at once, for the page may be gone before any wait is over; what follows is gathered.
      void flush();
      gather();
    },
    flush,
    drop() {
      waiting = false;
      callOff?.();
      callOff = null;
      if (saving.state === 'saving') set({ ...saving, state: 'saved' });
    },
  };
}
