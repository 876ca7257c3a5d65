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

/** Readings of one round, with what is asked of them. */
export interface Survey {
  readings: readonly SurveyReading[];
  method: MethodChoice;
}
