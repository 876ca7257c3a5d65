/** A lock held by this tab. */
export interface Held {
  /** Settles when another tab has taken it. */
  lost: Promise<void>;
  release(): void;
}

/** Locks that all tabs of one browser share. */
export interface Locks {
  /** Null where another tab holds it; `steal` takes it from that one. */
  take(name: string, how: 'free' | 'steal'): Promise<Held | null>;
  /** Settles when every tab before this one has let it go. */
  wait(name: string): Promise<Held>;
}

export interface Writer {
  readonly writes: boolean;
  /** Asks for the right to write; where another tab has it, stands in line for it. */
  ask(): Promise<void>;
  /** Takes it from the tab that has it. */
  steal(): Promise<void>;
  release(): void;
}

const LOCK = 'stillroom-writer';

/**
 * One tab writes; in all others the home can only be read, since two writers would overwrite each other's homes. `inherited`
 * is told when the right comes later by itself: the tab that had it was closed.
 */
export function createWriter(locks: Locks, changed: () => void, inherited: () => void): Writer {
  let held: Held | null = null;
  let inLine = false;
  let ended = false;

  const hold = (got: Held) => {
    held = got;
    void got.lost.then(() => {
      if (held !== got) return;
      held = null;
      changed();
      standInLine();
    });
    changed();
  };

  const standInLine = () => {
    if (inLine || ended) return;
    inLine = true;
    void locks.wait(LOCK).then((got) => {
      inLine = false;
      if (held || ended) return got.release();
      hold(got);
      inherited();
    });
  };

  return {
    get writes() {
      return held !== null;
    },
    async ask() {
      const got = await locks.take(LOCK, 'free');
      if (got) hold(got);
      else standInLine();
    },
    async steal() {
      const got = held ? null : await locks.take(LOCK, 'steal');
      if (got) hold(got);
    },
    release() {
      ended = true;
      held?.release();
      held = null;
    },
  };
}
