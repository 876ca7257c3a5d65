import type { PointerInput } from '../editor';

type Touch = Pick<PointerInput, 'x' | 'y'>;

/** What one finger's move does while another rests: how the middle went, how much wider the fingers stand, about where. */
export function pinchBetween(before: Touch, after: Touch, other: Touch) {
  const was = Math.hypot(before.x - other.x, before.y - other.y);
  const is = Math.hypot(after.x - other.x, after.y - other.y);
  return {
    dx: (after.x - before.x) / 2,
    dy: (after.y - before.y) / 2,
    // Fingers on one spot have no spread to compare with.
    factor: was > 1 && is > 1 ? is / was : 1,
    x: (after.x + other.x) / 2,
    y: (after.y + other.y) / 2,
  };
}
