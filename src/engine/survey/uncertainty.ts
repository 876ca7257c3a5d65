import { studentQuantile } from './student';

/** Standard uncertainty of a value known to lie within ± `halfWidth`, all places alike (JCGM 100:2008, 4.3.7). */
export const rectangular = (halfWidth: number): number => halfWidth / Math.sqrt(3);

/** Independent standard uncertainties of a sum, as one: the root of their squares (JCGM 100:2008, 5.1.2). */
export const combined = (components: readonly number[]): number => Math.hypot(...components);

/** A standard uncertainty and how many independent looks it rests on; Infinity where it is sure. */
export interface Component {
  uncertainty: number;
  degrees: number;
}

/** Degrees of freedom of the combined components (Welch–Satterthwaite; JCGM 100:2008, G.2b). */
export function effectiveDegrees(components: readonly Component[]): number {
  const total = combined(components.map(({ uncertainty }) => uncertainty)) ** 4;
  return total / components.reduce((sum, { uncertainty, degrees }) => sum + uncertainty ** 4 / degrees, 0);
}

/**
 * Half the interval that holds the value with probability `level`: t of the effective degrees, cut to a whole number, times
 * the combined uncertainty (JCGM 100:2008, G.4.1).
 */
export function expanded(components: readonly Component[], level: number): number {
  const degrees = Math.floor(effectiveDegrees(components));
  return (
    studentQuantile((1 + level) / 2, degrees) * combined(components.map(({ uncertainty }) => uncertainty))
  );
}
