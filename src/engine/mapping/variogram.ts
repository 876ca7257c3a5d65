import { negativeExponential } from './negativeExponential';

export type VariogramModel = 'spherical' | 'exponential' | 'gaussian';

/**
 * How unlike two places are by their distance h. Semivariance is 0 at h = 0, `nugget` just beside it and nugget + sill far
 * away; `range` is the model's own length a, metres (exponential: exp(−h/a), which is 95 % done at 3a).
 */
export interface Variogram {
  model: VariogramModel;
  /** Variation over less than the distance between readings: the field's own, not the meter's. */
  nugget: number;
  /** Of the part that depends on distance (partial sill). */
  sill: number;
  range: number;
}

/** Under 8 places, or where nothing varies, no variogram can be fitted: the project's choice stands in. */
export const DEFAULT_VARIOGRAM: Variogram = { model: 'exponential', nugget: 0, sill: 0.5, range: 3 };

/**
 * Correlation of the part that depends on distance at h = t × range, t ≥ 0: 1 at 0 (Cressie 1993, section 2.3.1). Looked up
 * once by loops that ask it millions of times.
 */
export const CORRELATION: Record<VariogramModel, (t: number) => number> = {
  exponential: negativeExponential,
  gaussian: (t) => negativeExponential(t * t),
  spherical: (t) => (t >= 1 ? 0 : 1 - 1.5 * t + 0.5 * t * t * t),
};

/** Half the mean square of a difference at distance h (Matheron 1963): γ(0) = 0. */
export const semivariance = ({ model, nugget, sill, range }: Variogram, h: number): number =>
  h === 0 ? 0 : nugget + sill * (1 - CORRELATION[model](h / range));
