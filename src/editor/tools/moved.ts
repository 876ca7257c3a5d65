import type { Aim } from './tool';

/** A hand is never still: within this many CSS pixels a press is a tap. */
const TAP: Record<Aim['type'], number> = { mouse: 3, pen: 5, touch: 8 };

/** Whether the pointer has gone far enough from where it was pressed to mean a drag. */
export const moved = (from: Pick<Aim, 'x' | 'y'>, to: Aim): boolean =>
  Math.hypot(to.x - from.x, to.y - from.y) > TAP[to.type];
