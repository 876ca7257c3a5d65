import type { View } from './editor';

type Visited = Pick<View, 'stage' | 'round'>;

export interface ArrangeOnEntry {
  /** An arrangement is still to be asked for. */
  readonly due: boolean;
  /** The stage may have changed, or the round. */
  follow(at: Visited): void;
  /** Another home is on the desk. */
  restart(at: Visited): void;
  /** What was lacking may be there now. */
  look(): void;
}

/** Coming to where furniture is arranged, or to another round there, asks for an arrangement: once a visit, as soon as `ready`. */
export function createArrangeOnEntry(ready: () => boolean, arrange: () => void): ArrangeOnEntry {
  let last: Visited | null = null;
  let due = false;
  const look = () => {
    if (!due || !ready()) return;
    due = false;
    arrange();
  };
  const restart = ({ stage, round }: Visited) => {
    last = { stage, round };
    due = stage === 'arrange';
    look();
  };
  return {
    get due() {
      return due;
    },
    look,
    restart,
    follow: (at) => (at.stage === last?.stage && at.round === last.round ? undefined : restart(at)),
  };
}
