import { meanOverDraws } from './meanOverDraws';
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
 * Daily dose in zones of one field, each with its own hours: the sum of mean field × hours over the zones, divided by
 * `people`. The zones' errors are the estimate's own and correlated (see `meanOverDraws`); without hours, the mean field is
 * that over all zones alike.
 */
export function sharedDose(
  field: Field,
  zones: readonly { zone: Zone; hours: number }[],
  people: number,
): ZoneDose {
  const cells = zones.flatMap(({ zone }) => zone.cells);
  const draws = field.draws({ xs: cells.map(([x]) => x), ys: cells.map(([, y]) => y) });
  const total = zones.reduce((sum, { hours }) => sum + hours, 0);
  const weights = zones.flatMap(({ zone, hours }) =>
    zone.cells.map(() => (total > 0 ? hours / total : 1 / zones.length) / zone.cells.length),
  );
  const { median, low, high } = meanOverDraws(draws, weights);
  const hours = total / people;
  return { mean: median, dose: median * hours, low: low * hours, high: high * hours };
}

/** Dose of one body in one zone (µT·h): mean field over the zone × hours. */
export const zoneDose = (field: Field, zone: Zone, hours: number): ZoneDose =>
  sharedDose(field, [{ zone, hours }], 1);
