/** A lock held by this tab. */
export interface Held {
  /** Settles when another tab has taken it. */
  lost: Promise<void>;
  release(): void;
}

/** Locks that all tabs of one browser share. */
export interface Locks {
  /** Null where another tab holds it and `steal` is false. */
  take(name: string, steal: boolean): Promise<Held | null>;
}

export interface Writer {
  readonly writes: boolean;
  /** Asks for the right to write, or takes it from another tab. */
  take(steal: boolean): Promise<void>;
  release(): void;
}

const LOCK = 'stillroom-writer';

/** One tab writes; in all others the home can only be read. Two writers would overwrite each other's homes. */
export function createWriter(locks: Locks, changed: () => void): Writer {
  let held: Held | null = null;
  return {
    get writes() {
      return held !== null;
    },
    async take(steal) {
      if (held) return;
      const got = await locks.take(LOCK, steal);
      if (!got) return;
      held = got;
      void got.lost.then(() => {
        if (held !== got) return;
        held = null;
        changed();
      });
      changed();
    },
    release() {
      held?.release();
      held = null;
    },
  };
}
