import { HALF_90 } from './interval';
import { studentQuantile } from '../survey/student';
import type { EvidenceRow } from './fitSurvey';

/** How often a survey with nothing wrong is asked about a reading all the same. */
const BY_LUCK = 0.05;

/** Under so many the spread of the others is not known. */
const FEWEST = 6;

/** Whether a reading lies inside the 90 % interval that the others predict for it. */
export const isInside = ({ read, low, high }: Pick<EvidenceRow, 'read' | 'low' | 'high'>): boolean =>
  read >= low && read <= high;

/**
 * Readings that deserve a second look, furthest off first. A left-out error in its own standard deviations is measured by
 * the root mean square of all the others' (a wild reading widens every interval, its own too, and would hide behind that);
 * it then follows Student's t with n − 1 degrees, and of n the largest is judged at 5 %/n (externally studentised
 * residuals with Bonferroni's bound: Cook & Weisberg 1982, Residuals and Influence in Regression, 2.2.2). What lies inside
 * its interval is never asked about. What one wild reading hides, or spoils beside it, shows once that has been dealt with.
 */
export function secondLooks(rows: readonly EvidenceRow[]): EvidenceRow[] {
  const open = rows
    .filter(({ low, high }) => high > low)
    .map((row) => ({ row, square: (Math.log(row.read / row.predicted) / sdOf(row)) ** 2 }));
  const n = open.length;
  if (n < FEWEST) return [];
  const all = open.reduce((sum, { square }) => sum + square, 0);
  const bound = studentQuantile(1 - BY_LUCK / (2 * n), n - 1);
  return open
    .filter(({ row, square }) => !isInside(row) && square > (bound ** 2 * (all - square)) / (n - 1))
    .sort((a, b) => b.square - a.square)
    .map(({ row }) => row);
}

/** Standard deviation of ln B read less predicted. */
const sdOf = ({ low, high }: EvidenceRow): number => Math.log(high / low) / (2 * HALF_90);
