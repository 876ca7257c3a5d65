import { brokenRules } from './brokenRules';
import { checkerOf, type Checker, type Fault } from './check/checkArrangement';
import { compare, staysOf, type Comparison, type PersonWorth, type Worth } from './compare';
import { keptBy } from './plan';
import { mapOver, type MapOver } from './mapOver';
import { withMetresLeft } from './metresLeft';
import { placesToRead, type ReadingPlace } from './placesToRead';
import { peopleOf } from '../dose/pieceDose';
import { doseOver, type ZoneDose } from '../dose/dose';
import { together, type BrokenRule } from './rules';
import { roomAt, siteOf } from './site';
import { standOf, type Stand } from './stand';
import type { ArrangePiece, ArrangeRequest } from './request';
import type { Candidate } from './candidates';
import { decideForWorstOff, type Decision } from './decide';
import type { FieldAt } from '../dose/fieldAt';
import type { ZoneMeans } from '../dose/zoneMeans';
import { isElsewhere, type Place, type Put } from './place';

/** One piece in an answer, with what its own place is worth to those who use it. */
export interface PlacedPiece extends Put, Worth {
  room: string;
  /** The piece whose new place takes the floor that this one has now; null where none does. */
  makesWayFor: string | null;
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
  /** Probability that the whole is lower than now; null where nothing moves, or where the map does not speak for all that does. */
  odds: number | null;
  /** Of the whole, or of whoever is worst off where that is asked for. */
  decision: Decision;
  /** The same by person: what the home is to each of them. */
  people: PersonWorth[];
  /** Where to read before deciding: two places at the present bed and two at the proposed one; none where that is clear. */
  readAt: ReadingPlace[];
  pieces: PlacedPiece[];
  /** What a second look by other means found wrong with the places; nothing for every answer that may be taken. */
  faults: Fault[];
}

/** What the chosen places are worth against those the pieces have now. */
export function answerOf(
  request: ArrangeRequest,
  map: MapOver,
  chosen: readonly Candidate[],
  check: Checker = checkerOf(request),
): Answer {
  const placeOf = (piece: ArrangePiece): Place => {
    const found = chosen.find(({ stand }) => stand.piece.id === piece.id);
    return found ? { level: levelOf(request, found.stand.room), ...found.stand.pose } : piece;
  };
  const comparison = compare(request, map, (piece) => piece, placeOf);
  const stands = chosen.map(({ stand }) => stand);
  const site = keptBy((room) =>
    siteOf(
      request,
      request.rooms.find(({ id }) => id === room)!,
    ),
  );
  const pieces = chosen.map(({ stand, breaks }): PlacedPiece => {
    const { piece, room } = stand;
    return {
      id: piece.id,
      room,
      ...placeOf(piece),
      ...comparison.of(piece),
      makesWayFor: inTheWay(request, piece, piece, stands),
      breaks: breaks.map((rule) => withMetresLeft(stand, site(room), rule)),
    };
  });
  const whole = wholeOf(comparison);
  return {
    ...whole,
    decision: decisionOf(request, whole),
    readAt: placesToRead(request.pieces, pieces, (piece) => piece),
    pieces,
    faults: check(pieces, leftAlone(pieces)),
  };
}

/**
 * What it is worth that pieces stand where they do now and no longer where they were `found`; null where none has moved.
 * Pieces that came later count as standing where they were.
 */
export function answerSince(
  request: Pick<ArrangeRequest, 'rooms' | 'pieces'>,
  map: MapOver,
  found: readonly Put[],
): Answer | null {
  const foundAt = (piece: ArrangePiece): Place => found.find(({ id }) => id === piece.id) ?? piece;
  if (!request.pieces.some((piece) => isElsewhere(foundAt(piece), piece))) return null;
  return { ...between(request, map, foundAt, (piece) => piece), faults: [] };
}

/**
 * What places chosen by hand are worth against those that the pieces have now, as if the planner had proposed them: for the
 * pieces that are `put`, in that order, each with every rule, hard or preferred, that it breaks among the others where they
 * are put. The other pieces of the request stand as found. Faults are those of the second look. What is found of rooms and map
 * is kept for the next choice of places.
 */
export function answersAt(request: ArrangeRequest, fieldAt: FieldAt): (puts: readonly Put[]) => Answer {
  const [map, rulesAt, check] = [
    mapOver(request, fieldAt, request.fitted),
    brokenRules(request, fieldAt),
    checkerOf(request),
  ];
  return (puts) => {
    const putOf = (piece: ArrangePiece) => puts.find(({ id }) => id === piece.id);
    const answer = between(
      request,
      map,
      (piece) => piece,
      (piece) => putOf(piece) ?? piece,
    );
    const pieces = puts.map((put) => ({
      ...answer.pieces.find(({ id }) => id === put.id)!,
      breaks: rulesAt(put, puts),
    }));
    const decision = decisionOf(request, answer);
    return { ...answer, decision, pieces, faults: check(puts, leftAlone(pieces)) };
  };
}

/** All pieces of a request at one place before and at another after. */
function between(
  request: Pick<ArrangeRequest, 'rooms' | 'pieces'>,
  map: MapOver,
  before: (piece: ArrangePiece) => Place,
  after: (piece: ArrangePiece) => Place,
): Omit<Answer, 'faults'> {
  const comparison = compare(request, map, before, after);
  const placed = request.pieces.map((piece) => {
    const { level, at, angle } = after(piece);
    const room = roomAt(request, level, at)?.id ?? '';
    return { piece, place: { level, at, angle }, stand: standOf(piece, room, { at, angle }, false) };
  });
  const stands = placed.map(({ stand }) => stand);
  const pieces = placed.map(({ piece, place, stand }): PlacedPiece => ({
    id: piece.id,
    room: stand.room,
    ...place,
    ...comparison.of(piece),
    makesWayFor: inTheWay(request, piece, before(piece), stands),
    breaks: [],
  }));
  return { ...wholeOf(comparison), readAt: placesToRead(request.pieces, pieces, before), pieces };
}

/** What nobody uses may stay however it stands. */
const leftAlone = (pieces: readonly PlacedPiece[]): string[] =>
  pieces.filter(({ moves, before }) => !moves && before === null).map(({ id }) => id);

/** What is said of the whole home. */
function wholeOf({
  whole: { before, after, odds, decision },
  people,
}: Comparison): Omit<Answer, 'pieces' | 'readAt' | 'faults'> {
  return {
    before: before?.dose ?? 0,
    beforeLow: before?.low ?? 0,
    beforeHigh: before?.high ?? 0,
    after: after?.dose ?? 0,
    low: after?.low ?? 0,
    high: after?.high ?? 0,
    odds,
    decision,
    people,
  };
}

const decisionOf = (
  { aim }: Pick<ArrangeRequest, 'aim'>,
  { odds, decision, people }: Pick<Answer, 'odds' | 'decision' | 'people'>,
): Decision => (aim === 'worst-off' && odds !== null ? decideForWorstOff(people) : decision);

// Two beds for two take no floor from each other.
const FLOOR_ALONE = { oneDouble: false };

/** The piece that stands so that another could not be together with it at a place. */
function inTheWay(
  request: Pick<ArrangeRequest, 'rooms'>,
  piece: ArrangePiece,
  place: Place,
  stands: readonly Stand[],
): string | null {
  const room = roomAt(request, place.level, place.at)?.id ?? '';
  const ways = [false, true].map((mirrored) => standOf(piece, room, place, mirrored));
  const other = stands.find(
    (stand) => stand.piece !== piece && ways.every((own) => !together(own, stand, FLOOR_ALONE)),
  );
  return other?.piece.id ?? null;
}

/** Dose of those who use a piece, standing somewhere. */
export function doseAt(means: ZoneMeans, piece: ArrangePiece, place: Place): ZoneDose {
  const stays = staysOf(piece, place);
  return doseOver(
    means(stays),
    stays.map(({ hours }) => hours),
    peopleOf(piece.uses),
  );
}

/** The level that a room of the request stands on; the room must be there. */
export const levelOf = ({ rooms }: Pick<ArrangeRequest, 'rooms'>, id: string): string =>
  rooms.find((room) => room.id === id)!.level;
