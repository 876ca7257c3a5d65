import { middleOf } from './overDraws';
import { zoneMeans, type MeansOfStays } from './zoneMeans';
import type { Field } from '../mapping/field';
import type { Zone } from './zones';

/** The mean field over a zone, µT, and times the hours spent there, µT·h a day: median and 90 % interval of the dose. */
export interface ZoneDose {
  mean: number;
  dose: number;
  low: number;
  high: number;
}

/**
 * Daily dose of some stays, each with its hours (one number a stay): the sum of mean field × hours, divided by `people`. The
 * zones' errors are the estimate's own and correlated (see `zoneMeans`); without hours, the mean field is that over all
 * stays alike.
 */
export function doseOver({ said }: MeansOfStays, hours: readonly number[], people: number): ZoneDose {
  const total = hours.reduce((sum, own) => sum + own, 0);
  const { median, low, high } = middleOf(
    said([hours.map((own) => (total > 0 ? own / total : 1 / hours.length))]),
    0,
  );
  const each = total / people;
  return { mean: median, dose: median * each, low: low * each, high: high * each };
}

/** Daily dose in zones of one field, each with its own hours, divided by `people` (see `doseOver`). */
export function sharedDose(
  field: Field,
  zones: readonly { zone: Zone; hours: number }[],
  people: number,
): ZoneDose {
  const means = zoneMeans(() => field)(zones.map(({ zone }) => ({ level: '', height: 0, zone })));
  return doseOver(
    means,
    zones.map(({ hours }) => hours),
    people,
  );
}

/** Dose of one body in one zone (µT·h): mean field over the zone × hours. */
export const zoneDose = (field: Field, zone: Zone, hours: number): ZoneDose =>
  sharedDose(field, [{ zone, hours }], 1);
