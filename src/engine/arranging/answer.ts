import { decide, dosesOf, jointOf, oddsBetween, widened, type Decision, type Stay } from './odds';
import { HALF_90 } from '../mapping/interval';
import { peopleOf } from '../dose/pieceDose';
import { sharedDose, type ZoneDose } from '../dose/dose';
import { zoneOf } from '../dose/zones';
import type { ArrangePiece, ArrangeRequest } from './request';
import type { BrokenRule } from './rules';
import type { Candidate } from './candidates';
import type { FieldAt } from '../dose/fieldAt';
import type { LogNormalSums } from '../dose/logNormalSum';
import type { Point } from '../geometry/point';

/** One piece in an answer. Doses are those of the piece, µT·h a day, mean over those who use it; null where nobody does. */
export interface PlacedPiece {
  id: string;
  room: string;
  level: string;
  at: Point;
  angle: number;
  before: ZoneDose | null;
  after: ZoneDose | null;
  /** Probability that the new place is lower than the present one; null where it does not move or nobody uses it. */
  odds: number | null;
  decision: Decision;
  moves: boolean;
  /** Preferences that no place could keep. */
  breaks: BrokenRule[];
}

/** A place for every piece, and the daily dose of the home: mean over its people, µT·h, with 90 % intervals. */
export interface Answer {
  before: number;
  beforeLow: number;
  beforeHigh: number;
  after: number;
  low: number;
  high: number;
  /** Probability that the whole is lower than now; null where nothing moves. */
  odds: number | null;
  decision: Decision;
  pieces: PlacedPiece[];
}

interface Place {
  level: string;
  at: Point;
  angle: number;
}

/** A day in a piece as it counts in a dose. */
interface Used extends Stay {
  piece: ArrangePiece;
  hours: number;
  when: 'before' | 'after';
}

/** What an answer is worth: doses with the estimate's own covariance, odds with one that leave-one-out agrees with. */
export function answerOf(request: ArrangeRequest, fieldAt: FieldAt, chosen: readonly Candidate[]): Answer {
  const placeOf = (piece: ArrangePiece): Place => {
    const found = chosen.find(({ stand }) => stand.piece.id === piece.id);
    return found ? { level: levelOf(request, found.stand.room), ...found.stand.pose } : piece;
  };
  const stays = request.pieces.flatMap((piece): Used[] => [
    ...staysOf(piece, piece, 'before'),
    ...staysOf(piece, placeOf(piece), 'after'),
  ]);
  const worth = worthOf(request, fieldAt, stays);
  const everybody = Math.max(1, peopleOf(request.pieces.flatMap(({ uses }) => uses)));
  const pieces = chosen.map((candidate): PlacedPiece => {
    const { piece, room } = candidate.stand;
    const place = placeOf(piece);
    const moves = isElsewhere(piece, place);
    const own = worth((stay) => stay.piece === piece, peopleOf(piece.uses), moves);
    const { at, angle } = place;
    return { id: piece.id, room, level: place.level, at, angle, moves, breaks: candidate.breaks, ...own };
  });
  const moves = pieces.some((piece) => piece.moves);
  const { before, after, odds, decision } = worth(() => true, everybody, moves);
  return {
    before: before?.dose ?? 0,
    beforeLow: before?.low ?? 0,
    beforeHigh: before?.high ?? 0,
    after: after?.dose ?? 0,
    low: after?.low ?? 0,
    high: after?.high ?? 0,
    odds,
    decision,
    pieces,
  };
}

/** Doses, odds and advice for some of the stays, as a mean over so many people. */
function worthOf(request: ArrangeRequest, fieldAt: FieldAt, stays: readonly Used[]) {
  const joint = jointOf(fieldAt, stays);
  const wide = widened(joint, request.fitted);
  return (
    counts: (stay: Used) => boolean,
    people: number,
    moves: boolean,
  ): Pick<PlacedPiece, 'before' | 'after' | 'odds' | 'decision'> => {
    const hours = stays.reduce(
      (sum, stay) => sum + (counts(stay) && stay.when === 'before' ? stay.hours : 0),
      0,
    );
    if (hours === 0) return { before: null, after: null, odds: null, decision: 'stay' };
    const days = (['before', 'after'] as const).map(
      (when) => (i: number) => (stays[i].when === when && counts(stays[i]) ? stays[i].hours / people : 0),
    );
    const [before, after] = doses(dosesOf(joint, stays, days), hours / people);
    const odds = moves ? oddsBetween(dosesOf(wide, stays, days), 0, 1) : null;
    return { before, after, odds, decision: decide(before.dose, after.dose, odds) };
  };
}

const doses = ({ ln, covariance }: LogNormalSums, hours: number): ZoneDose[] =>
  ln.map((median, i) => {
    const dose = Math.exp(median);
    const spread = Math.exp(HALF_90 * Math.sqrt(covariance[i][i]));
    return { mean: dose / hours, dose, low: dose / spread, high: dose * spread };
  });

/** Dose of those who use a piece, standing somewhere. */
export const doseAt = (fieldAt: FieldAt, piece: ArrangePiece, { level, at, angle }: Place): ZoneDose =>
  sharedDose(
    fieldAt(level, piece.height),
    piece.uses.map(({ side, hours }) => ({
      zone: zoneOf(piece.kind, { at, angle }, piece.size, side),
      hours,
    })),
    peopleOf(piece.uses),
  );

const staysOf = (piece: ArrangePiece, { level, at, angle }: Place, when: Used['when']): Used[] =>
  piece.uses.map(({ side, hours }) => ({
    level,
    height: piece.height,
    zone: zoneOf(piece.kind, { at, angle }, piece.size, side),
    piece,
    hours,
    when,
  }));

/** The level that a room of the request stands on; the room must be there. */
export const levelOf = ({ rooms }: ArrangeRequest, id: string): string =>
  rooms.find((room) => room.id === id)!.level;

// Less than this nobody would call a move: metres, degrees.
const SAME_PLACE = 0.01;
const SAME_ANGLE = 0.5;

function isElsewhere(now: Place, then: Place): boolean {
  const turn = Math.abs(((now.angle - then.angle + 540) % 360) - 180);
  const shift = Math.hypot(now.at[0] - then.at[0], now.at[1] - then.at[1]);
  return now.level !== then.level || shift > SAME_PLACE || turn > SAME_ANGLE;
}
