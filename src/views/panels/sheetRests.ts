import type { Stage } from '../../editor/editor';

/** Where the phone's sheet comes to rest: one sentence, half, whole. */
export type Rest = 0 | 1 | 2;

/** The top line that stays in sight over a whole sheet. */
const TOP_LINE = 56;

/** The three heights of the sheet, px, in a window of this height. Surveying needs room for its number pad. */
export function restHeights(windowHeight: number, stage: Stage): [number, number, number] {
  const half = Math.round(windowHeight * (stage === 'survey' ? 0.53 : 0.45));
  // The pad's four rows of keys and its button need 440 px; a small phone gives them at the plan's cost.
  const least = stage === 'survey' ? 440 : 280;
  const whole = windowHeight - TOP_LINE;
  return [96, Math.min(Math.max(half, least), whole), whole];
}

/** The rest nearest to a height; a flick (px per ms, upward positive) goes one rest on. */
export function restAt(height: number, speed: number, heights: readonly [number, number, number]): Rest {
  const aimed = height + speed * 180;
  let best: Rest = 0;
  for (const rest of [1, 2] as const)
    if (Math.abs(heights[rest] - aimed) < Math.abs(heights[best] - aimed)) best = rest;
  return best;
}
