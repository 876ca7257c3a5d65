import type { Point } from '../geometry/point';

/** What becomes of a marked source: its field times `scale` (0: off, 0.5: halved), and where it is moved to; null: it stays. */
export interface SourceChange {
  id: string;
  scale: number;
  path: readonly Point[] | null;
}

/** A source that is neither weaker nor elsewhere. */
export const isUnchanged = ({ scale, path }: SourceChange): boolean => scale === 1 && path === null;
