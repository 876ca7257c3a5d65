import type { Stage } from './editor';

export interface ArrangeOnEntry {
  /** The stage may have changed. */
  follow(stage: Stage): void;
  /** Another home is on the desk. */
  restart(stage: Stage): void;
  /** What was lacking may be there now. */
  look(): void;
}

/** Coming to where furniture is arranged asks for an arrangement: once a visit, as soon as `ready`. */
export function createArrangeOnEntry(ready: () => boolean, arrange: () => void): ArrangeOnEntry {
  let at: Stage | null = null;
  let due = false;
  const look = () => {
    if (!due || !ready()) return;
    due = false;
    arrange();
  };
  const restart = (stage: Stage) => {
    at = stage;
    due = stage === 'arrange';
    look();
  };
  return { look, restart, follow: (stage) => (stage === at ? undefined : restart(stage)) };
}
