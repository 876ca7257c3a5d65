import type { AssessPiece, AssessRoom } from '../assess';
import type { FittedSurvey } from '../mapping/fitSurvey';
import type { MeterSpec } from '../survey/meter';
import type { Point, Ring } from '../geometry/point';

/** µT: what is said of a mean field now, with its 90 % interval. */
interface Said {
  middle: number;
  low: number;
  high: number;
}

/** Something asked that readings can make surer. */
export type Aim =
  /** The middle of a room; `edges`: where its interval must not lie across a value (µT), null where every narrowing counts. */
  | { kind: 'room'; id: string; said: Said; edges: readonly number[] | null }
  /** The mean field over a piece's zones. */
  | { kind: 'piece'; id: string; said: Said; piece: AssessPiece }
  /** Which of two places has the lower dose; `odds`: that `then` has, 0…1. */
  | { kind: 'choice'; id: string; odds: number; now: AssessPiece; then: AssessPiece };

/** What is asked of the rule that finds the next readings. Plain data: it crosses to the worker and comes from the CLI. */
export interface NextRequest {
  fitted: FittedSurvey;
  /** All rooms: where somebody can stand. */
  rooms: readonly AssessRoom[];
  /** Nobody stands in these. */
  fixtures: readonly { level: string; outline: Ring }[];
  /** The meter that reads, and its height above the floor, metres. */
  meter: MeterSpec;
  height: number;
  /** Rooms whose map is to become surer, cell by cell; none where the aims alone are asked. */
  floor: readonly string[];
  aims: readonly Aim[];
  /** How many places at most. */
  count: number;
}

/**
 * What an aim gains by the reading: its interval, µT, before and after, were it to show what the map expects; or how likely
 * the better of two places is told, whatever it shows.
 */
export type Effect =
  | {
      kind: 'room' | 'piece';
      id: string;
      before: [low: number, high: number];
      after: [low: number, high: number];
    }
  | { kind: 'choice'; id: string; before: number; after: number };

/** A place to read, with those before it taken as read. */
export interface NextReading {
  level: string;
  at: Point;
  height: number;
  /** Of the aim that gains most of those still open; null where none is. */
  effect: Effect | null;
  /** Floor that is not drawn for want of a reading near, and will be, m². */
  drawn: number;
}

export interface NextReadings {
  readings: NextReading[];
  /** After these no further reading would change what was asked. */
  enough: boolean;
}
