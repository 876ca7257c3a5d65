import { fieldCovariance } from './covarianceMatrix';
import type { Place } from './observations';
import type { Predictor } from './field';
import type { Variogram } from './variogram';

/**
 * Without a reading a level is taken to be like the rest of the home, as unsurely as any place is: by how the home as a whole
 * spreads, which errs alike all over the level, and by the field's own unevenness, which does not.
 */
export function unreadLevel(places: readonly Place[], variogram: Variogram): Predictor {
  const mean = places.reduce((sum, { ln }) => sum + ln, 0) / places.length;
  const spread = places.reduce((sum, { ln }) => sum + (ln - mean) ** 2, 0) / (places.length - 1);
  const variance = spread + variogram.nugget + variogram.sill;
  return {
    mean: ({ xs }) => new Float64Array(xs.length).fill(mean),
    both: ({ xs }) => ({
      mean: new Float64Array(xs.length).fill(mean),
      variance: new Float64Array(xs.length).fill(variance),
    }),
    cross: (a, b) => fieldCovariance(variogram, a, b).map((own) => spread + own),
  };
}
