import type { BrokenRule } from './rules';
import type { Point } from '../geometry/point';
import type { ZoneDose } from '../dose/dose';

/**
 * What to do with a proposed place: move there; take readings at both places first; or stay, since the readings do not
 * show a gain.
 */
export type Decision = 'move' | 'measure-both' | 'stay';

/** One piece in an answer. Doses are the mean over the home's people, µT·h a day; null where nobody uses it. */
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

/** A place for every piece, and its daily dose as the mean over people, µT·h, with 90 % intervals. */
export interface Answer {
  before: number;
  beforeLow: number;
  beforeHigh: number;
  after: number;
  low: number;
  high: number;
  odds: number | null;
  decision: Decision;
  pieces: PlacedPiece[];
}

/** An answer that is different for the piece most slept in: it stands in another room, or at another wall. */
export interface Alternative extends Answer {
  differs: 'room' | 'wall';
}

/** The least dose the piece most slept in can have in a room, or the rule that keeps it out. */
export type RoomOffer =
  { id: string; dose: number; low: number; high: number } | { id: string; blocked: BrokenRule };

export interface Proposal extends Answer {
  /** No other of the places tried is lower. */
  proven: boolean;
  /** The piece that the alternatives and rooms speak of; null where none is unlocked and used. */
  about: string | null;
  alternatives: Alternative[];
  rooms: RoomOffer[];
  /** Pieces that fit nowhere and were left where they stand. */
  blocked: { id: string; rule: BrokenRule }[];
}
