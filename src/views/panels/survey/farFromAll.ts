import type { FieldUnit } from '../../../home/home';
import { fromUnit, inUnit } from '../../../words/numbers';

/** Why a value is asked about before it is kept; `unit`: the one in which the same figures would be like the rest. */
export type Doubt =
  | { kind: 'far-from-all'; unit: FieldUnit | null }
  /** `most`: the highest value the meter shows, µT. */
  | { kind: 'beyond-meter'; most: number; unit: FieldUnit | null };

// Fields of one home differ by a few hundred at most between a cupboard and a far corner; a slip of unit is 10, 100 or 1000.
const FAR = 100;
// What the figures would be in the unit that was meant: no further from the rest than this.
const LIKE = 10;

const UNITS: readonly FieldUnit[] = ['uT', 'mG', 'nT'];

/**
 * Whether a value is so far from everything that it is likely mistyped; null where it is not.
 *
 * @param value the value typed, µT
 * @param unit the unit it was typed in
 * @param read the values read in this home so far, µT
 * @param most the highest value the meter shows, µT
 */
export function farFromAll(
  value: number,
  unit: FieldUnit,
  read: readonly number[],
  most: number,
): Doubt | null {
  const shown = read.filter((each) => each > 0);
  const low = Math.min(...shown);
  const high = Math.max(...shown);
  const figures = inUnit(value, unit);
  const meant = UNITS.find((other) => {
    const field = fromUnit(figures, other);
    return other !== unit && field >= low / LIKE && field <= high * LIKE;
  });
  if (value > most) return { kind: 'beyond-meter', most, unit: meant ?? null };
  if (shown.length === 0 || value <= 0 || (value <= high * FAR && value >= low / FAR)) return null;
  return { kind: 'far-from-all', unit: meant ?? null };
}
