import { doseOver } from './dose';
import { isDrawn } from './isDrawn';
import { zoneMeans } from './zoneMeans';
import type { FieldAt } from './fieldAt';
import type { AssessPiece, PieceDose } from '../assess';

/** The daily dose of those who use a piece where it stands; null for a piece that nobody uses. */
export function pieceDose(fieldAt: FieldAt, piece: AssessPiece): PieceDose | null {
  const { id, level, height, uses } = piece;
  if (uses.length === 0) return null;
  const means = zoneMeans(fieldAt);
  const stays = uses.map(({ zone }) => ({ level, height, zone }));
  const hours = uses.map((use) => use.hours);
  const dose = doseOver(means(stays), hours, peopleOf(uses));
  return {
    id,
    mean: dose.mean,
    dose,
    uses: uses.map(({ who }, i) => ({ who, dose: doseOver(means([stays[i]]), [hours[i]], 1) })),
    supported: isDrawn(
      fieldAt(level, height),
      uses.flatMap(({ zone }) => zone.cells),
    ),
  };
}

/** How many different people there are among some uses. */
export const peopleOf = (uses: readonly { who: string }[]): number =>
  new Set(uses.map(({ who }) => who)).size;
