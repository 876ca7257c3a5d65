import { combined, rectangular } from './uncertainty';

/** What the engine needs to know of a gaussmeter. Fields are in µT but for `percent` (of the value shown) and `gain`. */
export interface MeterSpec {
  percent: number;
  absolute: number;
  /** Accuracy as hard limits (±) or as an expanded uncertainty with k = 2. */
  coverage: 'limits' | 'k2';
  resolution: number;
  /** The values the display can show. */
  range: readonly [number, number];
  /** true = gain × shown + offset, found by comparing meters side by side. */
  gain: number;
  offset: number;
}

/** A meter nobody described: ±10 % and ±1 of the last digit, which is common among low-cost survey meters. */
export const COMMON_METER: MeterSpec = {
  percent: 10,
  absolute: 0.01,
  coverage: 'limits',
  resolution: 0.01,
  range: [0.01, 200],
  gain: 1,
  offset: 0,
};

/** The least value, µT, that a display can show and mean: a 0 says only that the field is under it. */
export const leastShown = ({ range, resolution }: Pick<MeterSpec, 'range' | 'resolution'>): number =>
  Math.max(range[0], resolution);

/** The field, µT, where the meter shows `shown`. */
export const correct = (meter: MeterSpec, shown: number): number => meter.gain * shown + meter.offset;

/**
 * Standard uncertainty of the corrected field, µT, where the meter shows `shown`: accuracy limits are rectangular (÷√3),
 * an expanded uncertainty is halved, a display step is rectangular of half a step (÷2√3); combined as a root of squares
 * and carried through the correction (JCGM 100:2008, 4.3.7, 4.3.3, F.2.2.1, 5.1.2).
 */
export function standardUncertainty(meter: MeterSpec, shown: number): number {
  const accuracy = (meter.percent / 100) * shown + meter.absolute;
  return (
    Math.abs(meter.gain) *
    combined([
      meter.coverage === 'k2' ? accuracy / 2 : rectangular(accuracy),
      rectangular(meter.resolution / 2),
    ])
  );
}

/**
 * Variance of ln B that goes with a standard uncertainty of `uncertainty` about `field` (same unit): that of the
 * log-normal law with this mean and standard deviation, ln(1 + u²/B²). Dimensionless.
 */
export const lnVariance = (field: number, uncertainty: number): number =>
  Math.log1p((uncertainty / field) ** 2);
