import { HALF_90 } from '../mapping/interval';
import { lnVariance, standardUncertainty, type MeterSpec } from '../survey/meter';

/**
 * What a meter is expected to show, µT, before its correction: between these nine times in ten, where the map's 90 % interval
 * of the field is low–high. The estimate's variance of ln B and the meter's add up.
 */
export function expectedReading(meter: MeterSpec, low: number, high: number): { low: number; high: number } {
  const shown = (field: number) => Math.max(0, (field - meter.offset) / meter.gain);
  const middle = Math.sqrt(low * high);
  const variance = lnVariance(middle, standardUncertainty(meter, shown(middle)));
  const half = Math.hypot(Math.log(high / low) / 2, HALF_90 * Math.sqrt(variance));
  return { low: shown(middle * Math.exp(-half)), high: shown(middle * Math.exp(half)) };
}
