import { observe } from '../observations';
import type { Point } from '../../geometry/point';
import type { SourceSamples } from './samples';
import type { Survey, Wall } from '../survey';

/** What was read at one place of a level: metres, z over one floor common to all levels, ln of µT and its variance by the meter. */
export interface SampledPlace {
  level: string;
  x: number;
  y: number;
  z: number;
  ln: number;
  variance: number;
}

/** A source that a person marked, as the sampler takes it: a line by its path, an appliance by one place; z in metres. */
export interface Mark {
  id: string;
  /** `rise`: a current up a wall, of which the plan shows one place. */
  kind: 'line' | 'point' | 'rise';
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

/** Many short chains, since those that fit worse give way: three times as many sweeps bring known homes 3 to 8 % nearer. */
export const FULL_EFFORT: Effort = { chains: 40, burn: 600, keep: 300, samples: 120 };

export interface SamplingQuestion {
  places: readonly SampledPlace[];
  walls: readonly Wall[];
  marked: readonly Mark[];
  seed: number;
  effort: Effort;
  /** Earlier samples to start from, so that one changed reading does not shake the map. */
  start?: SourceSamples;
}

/**
 * The question that a survey puts: readings made places, heights counted from one floor for all levels. A marked line goes
 * on beyond what was drawn of it unless it is the house's own; a point whose field falls as 1/r is a current that rises.
 */
export function samplingQuestion(
  { readings, sources, elevations, walls }: Survey,
  { seed, effort, start }: Pick<SamplingQuestion, 'seed' | 'effort' | 'start'>,
): SamplingQuestion {
  const floor = (level: string) => elevations[level] ?? 0;
  return {
    places: observe(readings).map(({ level, x, y, height, ln, variance }) => ({
      level,
      x,
      y,
      z: floor(level) + height,
      ln,
      variance,
    })),
    marked: sources.map(({ id, kind, path, level, height, falloff, origin }) => ({
      id,
      kind: kind === 'point' && falloff === 1 ? 'rise' : kind,
      path,
      z: floor(level) + height,
      passes: kind === 'line' && origin !== 'house',
    })),
    walls,
    seed,
    effort,
    start,
  };
}
