import { decide, type Decision } from './decide';
import { doseOver, type ZoneDose } from '../dose/dose';
import { isElsewhere, type Place } from './place';
import { roomAt } from './site';
import type { MapOver } from './mapOver';
import { oddsBetween } from '../dose/overDraws';
import { peopleOf } from '../dose/pieceDose';
import { zoneOf } from '../dose/zones';
import type { ArrangePiece, ArrangeRequest } from './request';
import type { MeansOfStays, Stay } from '../dose/zoneMeans';

/** What a change of place is worth. Doses are µT·h a day, mean over those who count; null where nobody does. */
export interface Worth {
  moves: boolean;
  before: ZoneDose | null;
  after: ZoneDose | null;
  /**
   * Probability that the dose after is lower than before; null where nothing moves or nobody is there, or where something moves
   * to or from a place that is outside all rooms or that the map does not speak for.
   */
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

/** A day in a piece. */
interface Day extends Stay {
  who: string;
  hours: number;
}

interface Used extends Day {
  piece: ArrangePiece;
  when: 'before' | 'after';
}

/**
 * What it is worth that pieces stand at one place and no longer at another: doses with the estimate's own doubt, odds with
 * one that leave-one-out agrees with.
 */
export function compare(
  { rooms, pieces }: Pick<ArrangeRequest, 'rooms' | 'pieces'>,
  { means, speaksFor }: MapOver,
  before: (piece: ArrangePiece) => Place,
  after: (piece: ArrangePiece) => Place,
): Comparison {
  const stays = pieces.flatMap((piece): Used[] => [
    ...staysOf(piece, before(piece)).map((day) => ({ ...day, piece, when: 'before' as const })),
    ...staysOf(piece, after(piece)).map((day) => ({ ...day, piece, when: 'after' as const })),
  ]);
  const moves = (piece: ArrangePiece) => isElsewhere(before(piece), after(piece));
  const isKnown = (piece: ArrangePiece, place: Place) =>
    piece.uses.length === 0 || (roomAt({ rooms }, place.level, place.at) !== null && speaksFor(piece, place));
  const unknown = pieces.filter(
    (piece) => moves(piece) && !(isKnown(piece, before(piece)) && isKnown(piece, after(piece))),
  );
  const worth = worthOf(means(stays), stays, unknown);
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
function worthOf(means: MeansOfStays, stays: readonly Used[], unknown: readonly ArrangePiece[]) {
  return (counts: (stay: Used) => boolean, people: number, moves: boolean): Worth => {
    const [now, then] = (['before', 'after'] as const).map((when) =>
      stays.map((stay) => (stay.when === when && counts(stay) ? stay.hours : 0)),
    );
    if (now.every((hours) => hours === 0))
      return { moves, before: null, after: null, odds: null, decision: 'stay' };
    const [before, after] = [now, then].map((hours) => doseOver(means, hours, people));
    const isKnown = !stays.some((stay) => counts(stay) && unknown.includes(stay.piece));
    const odds = moves && isKnown ? oddsBetween(means.widened([now, then]), 0, 1) : null;
    return { moves, before, after, odds, decision: decide(before.dose, after.dose, odds) };
  };
}

/** The days spent in a piece that stands somewhere. */
export const staysOf = (piece: ArrangePiece, { level, at, angle }: Place): Day[] =>
  piece.uses.map(({ who, side, hours }) => ({
    who,
    level,
    height: piece.height,
    zone: zoneOf(piece.kind, { at, angle }, piece.size, side),
    hours,
  }));
