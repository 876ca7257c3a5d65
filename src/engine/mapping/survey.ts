import type { MeterSpec } from '../survey/meter';
import type { Point } from '../geometry/point';

/** One value at one point, as the engine takes it: fields in µT, lengths in metres. */
export interface SurveyReading {
  id: string;
  level: string;
  at: Point;
  /** Above the level's floor. */
  height: number;
  /** What the display showed, before correction; with a limit, the value it could not pass. */
  value: number;
  meter: MeterSpec;
  limit: 'below' | 'above' | null;
  /** The lowest and highest value shown while standing there. */
  min: number | null;
  max: number | null;
  /** A peak-hold figure, not the steady value. */
  peak: boolean;
}

/** How the map is to be made, or to be left to the readings. */
export type MethodChoice = 'auto' | 'inverse-distance' | 'kriging' | 'source-kriging' | 'source-sampling';

/** Where field comes from, as somebody marked it. */
export interface MarkedSource {
  id: string;
  kind: 'line' | 'point';
  level: string;
  /** One corner for a point, two or more for a line. */
  path: readonly Point[];
  /** Above the level's floor. */
  height: number;
  /** B falls as 1/r to this power, or to whichever of 1, 2 and 3 the readings speak for. */
  falloff: 1 | 2 | 3 | 'fit';
  origin: 'outside' | 'house' | 'unknown';
}

/** A stretch of wall, from floor to ceiling, metres over one floor common to all levels: where currents run unseen. */
export interface Wall {
  from: Point;
  to: Point;
  floor: number;
  ceiling: number;
}

/** Readings of one round and the marked sources, with what is asked of them. */
export interface Survey {
  readings: readonly SurveyReading[];
  sources: readonly MarkedSource[];
  /** Each level's floor above the street, so that a source counts on every level. */
  elevations: Readonly<Record<string, number>>;
  walls: readonly Wall[];
  method: MethodChoice;
}
