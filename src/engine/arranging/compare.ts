import { decide, dosesOf, jointOf, oddsBetween, widened, type Decision, type Stay } from './odds';
import { HALF_90 } from '../mapping/interval';
import { peopleOf } from '../dose/pieceDose';
import { zoneOf } from '../dose/zones';
import type { ArrangePiece } from './request';
import type { FieldAt } from '../dose/fieldAt';
import type { FittedSurvey } from '../mapping/fitSurvey';
import type { LogNormalSums } from '../dose/logNormalSum';
import { isElsewhere, type Place } from './place';
import type { ZoneDose } from '../dose/dose';

/** What a change of place is worth. Doses are µT·h a day, mean over those who count; null where nobody does. */
export interface Worth {
  moves: boolean;
  before: ZoneDose | null;
  after: ZoneDose | null;
  /** Probability that the dose after is lower than before; null where nothing moves or nobody is there. */
  odds: number | null;
  decision: Decision;
}

/** What a change is worth to one person, over all that person uses. */
export interface PersonWorth extends Worth {
  who: string;
}

/** Two sets of places compared: for the home as a whole, as the mean over its people, by person and piece by piece. */
export interface Comparison {
  whole: Worth;
  people: PersonWorth[];
  of(piece: ArrangePiece): Worth;
}

/** A day in a piece as it counts in a dose. */
interface Used extends Stay {
  piece: ArrangePiece;
  who: string;
  hours: number;
  when: 'before' | 'after';
}

/**
 * What it is worth that pieces stand at one place and no longer at another: doses with the estimate's own covariance, odds
 * with one that leave-one-out agrees with.
 */
export function compare(
  { fitted, pieces }: { fitted: Pick<FittedSurvey, 'meanSquareZ'>; pieces: readonly ArrangePiece[] },
  fieldAt: FieldAt,
  before: (piece: ArrangePiece) => Place,
  after: (piece: ArrangePiece) => Place,
): Comparison {
  const stays = pieces.flatMap((piece): Used[] => [
    ...staysOf(piece, before(piece), 'before'),
    ...staysOf(piece, after(piece), 'after'),
  ]);
  const worth = worthOf(fitted, fieldAt, stays);
  const moves = (piece: ArrangePiece) => isElsewhere(before(piece), after(piece));
  const people = [...new Set(pieces.flatMap(({ uses }) => uses.map(({ who }) => who)))].sort();
  const uses = (piece: ArrangePiece, who: string) => piece.uses.some((use) => use.who === who);
  return {
    whole: worth(() => true, Math.max(1, people.length), pieces.some(moves)),
    people: people.map((who) => ({
      who,
      ...worth(
        (stay) => stay.who === who,
        1,
        pieces.some((piece) => uses(piece, who) && moves(piece)),
      ),
    })),
    of: (piece) => worth((stay) => stay.piece === piece, peopleOf(piece.uses), moves(piece)),
  };
}

/** Doses, odds and advice for some of the stays, as a mean over so many people. */
function worthOf(fitted: Pick<FittedSurvey, 'meanSquareZ'>, fieldAt: FieldAt, stays: readonly Used[]) {
  const joint = jointOf(fieldAt, stays);
  const wide = widened(joint, fitted);
  return (counts: (stay: Used) => boolean, people: number, moves: boolean): Worth => {
    const hours = stays.reduce(
      (sum, stay) => sum + (counts(stay) && stay.when === 'before' ? stay.hours : 0),
      0,
    );
    if (hours === 0) return { moves, before: null, after: null, odds: null, decision: 'stay' };
    const days = (['before', 'after'] as const).map(
      (when) => (i: number) => (stays[i].when === when && counts(stays[i]) ? stays[i].hours / people : 0),
    );
    const [before, after] = doses(dosesOf(joint, stays, days), hours / people);
    const odds = moves ? oddsBetween(dosesOf(wide, stays, days), 0, 1) : null;
    return { moves, before, after, odds, decision: decide(before.dose, after.dose, odds) };
  };
}

const doses = ({ ln, covariance }: LogNormalSums, hours: number): ZoneDose[] =>
  ln.map((median, i) => {
    const dose = Math.exp(median);
    const spread = Math.exp(HALF_90 * Math.sqrt(covariance[i][i]));
    return { mean: dose / hours, dose, low: dose / spread, high: dose * spread };
  });

const staysOf = (piece: ArrangePiece, { level, at, angle }: Place, when: Used['when']): Used[] =>
  piece.uses.map(({ who, side, hours }) => ({
    who,
    level,
    height: piece.height,
    zone: zoneOf(piece.kind, { at, angle }, piece.size, side),
    piece,
    hours,
    when,
  }));
