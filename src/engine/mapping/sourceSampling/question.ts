import type { Point } from '../../geometry/point';
import type { SourceSamples } from './samples';

/** What was read at one place: metres, z over one floor common to all levels, ln of µT and its variance by the meter. */
export interface SampledPlace {
  x: number;
  y: number;
  z: number;
  ln: number;
  variance: number;
}

/** A stretch of wall, from floor to ceiling, metres. */
export interface Wall {
  from: Point;
  to: Point;
  floor: number;
  ceiling: number;
}

/** A source that a person saw and marked: a line by its path, an appliance by one place; z in metres. */
export interface MarkedSource {
  kind: 'line' | 'point';
  path: readonly Point[];
  z: number;
  /** A line that goes on beyond its drawn ends, as one along a street does. */
  passes: boolean;
}

/** How long to look: sweeps before and while samples are kept, in each of so many chains. */
export interface Effort {
  chains: number;
  burn: number;
  keep: number;
  /** Over all chains. */
  samples: number;
}

/** Two seeds differ less the longer the chains; this is where 36 readings stop gaining on known homes. */
export const FULL_EFFORT: Effort = { chains: 10, burn: 1500, keep: 1500, samples: 100 };

export interface SamplingQuestion {
  places: readonly SampledPlace[];
  walls: readonly Wall[];
  marked: readonly MarkedSource[];
  seed: number;
  effort: Effort;
  /** Earlier samples to start from, so that one changed reading does not shake the map. */
  start?: SourceSamples;
}
