import type { Alternative } from './arrange';
import type { Answer } from './answer';

/**
 * Whether an answer offers what neither the best nor the home as it stands does: the piece it is about goes to another room, or to
 * a wall where its dose or that of the whole differs. Where that piece stays, the whole must differ from both.
 */
export function isAnother(best: Pick<Answer, 'after' | 'pieces'>, other: Alternative): boolean {
  const placed = ({ pieces }: Pick<Answer, 'pieces'>) => pieces.find(({ id }) => id === other.piece);
  const [own, inBest] = [placed(other), placed(best)];
  const isBest = isAlike(other.after, best.after);
  if (!own?.moves) return !isBest && !isAlike(other.after, other.before);
  return other.differs === 'room' || !isBest || !isAlike(own.after?.dose ?? 0, inBest?.after?.dose ?? 0);
}

/** Doses are told to two figures. */
const isAlike = (a: number, b: number): boolean => a.toPrecision(2) === b.toPrecision(2);
