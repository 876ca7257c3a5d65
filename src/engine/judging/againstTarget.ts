import type { RoomFigures } from './rooms';

/** How the middle of a room lies to a target: over it, under it, or too near it for the readings to tell. */
export type AgainstTarget = 'over' | 'under' | 'untold';

/** Over where the whole interval lies above the target, under where none of it does. */
export function againstTarget(
  { low, high }: Pick<RoomFigures, 'low' | 'high'>,
  target: number,
): AgainstTarget {
  if (low > target) return 'over';
  return high <= target ? 'under' : 'untold';
}
