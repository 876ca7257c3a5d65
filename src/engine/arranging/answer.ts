import { compareStays, decide, type Decision, type Stay } from './odds';
import { HALF_90 } from '../mapping/fitSurvey';
import { peopleOf } from '../dose/pieceDose';
import { sharedDose, type ZoneDose } from '../dose/dose';
import { zoneOf } from '../dose/zones';
import type { ArrangePiece, ArrangeRequest } from './request';
import type { BrokenRule } from './rules';
import type { Candidate } from './candidates';
import type { FieldAt } from '../dose/fieldAt';
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

/** What an answer is worth, from the estimate's own covariance (times `inflation` for the odds). */
export function answerOf(
  request: ArrangeRequest,
  fieldAt: FieldAt,
  inflation: number,
  chosen: readonly Candidate[],
): Answer {
  const people = Math.max(1, peopleOf(request.pieces.flatMap(({ uses }) => uses)));
  const placeOf = (piece: ArrangePiece): Place => {
    const found = chosen.find(({ stand }) => stand.piece.id === piece.id);
    return found ? { level: levelOf(request, found.stand.room), ...found.stand.pose } : piece;
  };
  const pieces = chosen.map((candidate) =>
    placedPiece(candidate, placeOf(candidate.stand.piece), fieldAt, inflation),
  );
  const used = request.pieces.filter(({ uses }) => uses.some(({ hours }) => hours > 0));
  const moves = pieces.some((piece) => piece.moves);
  if (used.length === 0) {
    const none = { before: 0, beforeLow: 0, beforeHigh: 0, after: 0, low: 0, high: 0 };
    return { ...none, odds: null, decision: 'stay', pieces };
  }
  const before = used.flatMap((piece) => staysOf(piece, piece, people));
  const after = used.flatMap((piece) => staysOf(piece, placeOf(piece), people));
  const doses = compareStays(fieldAt, before, after, 1);
  const odds = moves ? compareStays(fieldAt, before, after, inflation).odds : null;
  const [now, beforeLow, beforeHigh] = intervalOf(doses.before);
  const [then, low, high] = intervalOf(doses.after);
  return {
    before: now,
    beforeLow,
    beforeHigh,
    after: then,
    low,
    high,
    odds,
    decision: decide(now, then, odds),
    pieces,
  };
}

function placedPiece(
  { stand, breaks }: Candidate,
  place: Place,
  fieldAt: FieldAt,
  inflation: number,
): PlacedPiece {
  const { piece, room } = stand;
  const moves = isElsewhere(piece, place);
  const used = piece.uses.length > 0;
  const before = used ? doseAt(fieldAt, piece, piece) : null;
  const after = used ? doseAt(fieldAt, piece, place) : null;
  const odds =
    used && moves
      ? compareStays(fieldAt, staysOf(piece, piece, 1), staysOf(piece, place, 1), inflation).odds
      : null;
  const decision = before && after ? decide(before.dose, after.dose, odds) : 'stay';
  return { id: piece.id, room, ...place, before, after, odds, decision, moves, breaks };
}

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

const staysOf = (piece: ArrangePiece, { level, at, angle }: Place, people: number): Stay[] =>
  piece.uses.map(({ side, hours }) => ({
    level,
    height: piece.height,
    zone: zoneOf(piece.kind, { at, angle }, piece.size, side),
    weight: hours / people,
  }));

function intervalOf({ ln, variance }: { ln: number; variance: number }): [number, number, number] {
  const spread = HALF_90 * Math.sqrt(variance);
  return [Math.exp(ln), Math.exp(ln - spread), Math.exp(ln + spread)];
}

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
