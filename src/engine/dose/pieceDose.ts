import { doseOver } from './dose';
import { zoneMeans } from './zoneMeans';
import type { FieldAt } from './fieldAt';
import type { AssessPiece, PieceDose } from '../assess';

/** A zone is spoken for by the map where this share of it is drawn: the project's choice. */
export const SUPPORTED_SHARE = 0.95;

/** The daily dose of those who use a piece where it stands; null for a piece that nobody uses. */
export function pieceDose(fieldAt: FieldAt, piece: AssessPiece): PieceDose | null {
  const { id, level, height, uses } = piece;
  if (uses.length === 0) return null;
  const means = zoneMeans(fieldAt);
  const stays = uses.map(({ zone }) => ({ level, height, zone }));
  const hours = uses.map((use) => use.hours);
  const dose = doseOver(means(stays), hours, peopleOf(uses));
  const cells = uses.flatMap(({ zone }) => zone.cells);
  const { doubt } = fieldAt(level, height).support(
    cells.map(([x]) => x),
    cells.map(([, y]) => y),
  );
  const drawn = cells.filter((_, i) => doubt[i] <= 1).length;
  return {
    id,
    mean: dose.mean,
    dose,
    uses: uses.map(({ who }, i) => ({ who, dose: doseOver(means([stays[i]]), [hours[i]], 1) })),
    supported: drawn >= SUPPORTED_SHARE * cells.length,
  };
}

/** How many different people there are among some uses. */
export const peopleOf = (uses: readonly { who: string }[]): number =>
  new Set(uses.map(({ who }) => who)).size;
