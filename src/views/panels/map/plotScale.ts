import { scaleLog } from 'd3-scale';

/** A logarithmic axis: field values to pixels, with the ticks that fit. */
export interface LogScale {
  at(value: number): number;
  ticks: number[];
  low: number;
  high: number;
}

const STEPS = [1, 3];

/** An axis over these values, with a margin, from pixel `from` to pixel `to`. */
export function logScale(values: readonly number[], from: number, to: number, margin = 1.25): LogScale {
  const positive = values.filter((value) => value > 0 && Number.isFinite(value));
  let low = Math.min(...positive) / margin;
  let high = Math.max(...positive) * margin;
  if (positive.length === 0) [low, high] = [0.01, 1];
  // Less than a factor of three makes noise look like a story.
  const missing = 3 / (high / low);
  if (missing > 1) {
    low /= Math.sqrt(missing);
    high *= Math.sqrt(missing);
  }
  const ticks: number[] = [];
  for (let decade = Math.floor(Math.log10(low)); decade <= Math.ceil(Math.log10(high)); decade++)
    for (const step of STEPS) {
      const tick = Number((step * 10 ** decade).toPrecision(3));
      if (tick >= low && tick <= high) ticks.push(tick);
    }
  return { at: scaleLog([low, high], [from, to]), ticks, low, high };
}
