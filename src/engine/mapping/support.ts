import { HALF_90 } from './interval';

/** High and low may differ by no more than this factor for an estimate to be shown: the project's choice. */
export const WIDEST = 10;

/** A level with fewer places than this is not shown. */
const LEAST = 3;

/** How far a reading reaches, metres, indoors; grounds, where fields change slowly, take 10. The project's choice. */
export const REACH = 3;

/**
 * The same where sources were sampled: physics speaks for places that no reading is near, as far as known homes read at one
 * end only were seen to bear it out (at least 85 % of the truth inside the 90 % interval, marked or not).
 */
export const SAMPLED_REACH = 7;

/** Why an estimate is not shown: its interval is too wide, no reading is near, the level has too few readings; null: shown. */
export const REASONS = [null, 'wide', 'far', 'few'] as const;

export interface Support {
  /** Above 1 the estimate does not deserve to be shown; continuous, so that its contour at 1 is a smooth line. */
  doubt: Float64Array;
  /** Index of REASONS. */
  reason: Uint8Array;
}

/**
 * Whether estimates deserve to be shown, from their variance of ln B and their distance to the nearest of `places` readings
 * of the level: doubt is ln(high/low) ÷ ln 10 or distance ÷ reach, whichever is more.
 */
export function supportOf(
  variance: Float64Array,
  distance: Float64Array,
  reach: number | ArrayLike<number>,
  places: number,
): Support {
  const doubt = new Float64Array(variance.length);
  const reason = new Uint8Array(variance.length);
  for (let i = 0; i < doubt.length; i++) {
    const wide = (2 * HALF_90 * Math.sqrt(variance[i])) / Math.log(WIDEST);
    const far = distance[i] / (typeof reach === 'number' ? reach : reach[i]);
    doubt[i] = places < LEAST ? Math.max(2, wide) : Math.max(wide, far);
    reason[i] = doubt[i] <= 1 ? 0 : places < LEAST ? 3 : far > wide ? 2 : 1;
  }
  return { doubt, reason };
}
