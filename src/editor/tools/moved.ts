import type { PointerInput } from '../editor';

/** A hand is never still: within this many CSS pixels a press is a tap. */
const TAP: Record<PointerInput['type'], number> = { mouse: 4, pen: 5, touch: 8 };

type Spot = Pick<PointerInput, 'x' | 'y'>;

/** Whether the pointer is still where it was pressed, as far as a hand can hold it. */
export const isTap = (from: Spot, to: Spot & Pick<PointerInput, 'type'>): boolean =>
  Math.hypot(to.x - from.x, to.y - from.y) <= TAP[to.type];

/** Whether the pointer has gone far enough from where it was pressed to mean a drag. */
export const moved = (from: Spot, to: Spot & Pick<PointerInput, 'type'>): boolean => !isTap(from, to);
