import type { FieldUnit } from '../../../home/home';
import { fromUnit, inUnit } from '../../../words/numbers';

/** What the map makes of a value while its reader still stands there. */
export type AtEntry =
  | { kind: 'fits' }
  | { kind: 'above' | 'below' }
  /** So far off that it is asked about; `unit`: the unit in which the same figures would fit. */
  | { kind: 'far'; side: 'above' | 'below'; unit: FieldUnit | null };

// Beyond a factor of three past the interval a value is more often mistyped than true.
const FAR = 3;

const UNITS: readonly FieldUnit[] = ['uT', 'mG', 'nT'];

/**
 * @param value the value typed, µT
 * @param unit the unit it was typed in
 * @param low @param high what the meter is expected to show there nine times in ten, µT
 */
export function atEntry(value: number, unit: FieldUnit, low: number, high: number): AtEntry {
  const fits = (field: number) => field >= low && field <= high;
  if (fits(value)) return { kind: 'fits' };
  const side = value > high ? 'above' : 'below';
  if (side === 'above' ? value <= high * FAR : value >= low / FAR) return { kind: side };
  const figures = inUnit(value, unit);
  const meant = UNITS.find((other) => {
    if (other === unit) return false;
    const field = fromUnit(figures, other);
    return field >= low / 2 && field <= high * 2;
  });
  return { kind: 'far', side, unit: meant ?? null };
}
