import { inverseDistanceChanges } from './inverseDistanceChanges';
import { krigedChanges } from './krigedChanges';
import { sourceChanges } from './sourceChanges';
import type { FittedSurvey } from '../fitSurvey';
import type { Points } from '../covarianceMatrix';

/** Points of one level at one height above its floor, metres. */
export interface Ground extends Points {
  level: string;
  height: number;
}

/**
 * What leaving a place out changes of ln B at each point of the ground, one a place of the survey: without it less with it.
 * What was fitted to all of them (variogram, power, exponents) is kept, as in Cook's distance (Cook 1977, Technometrics
 * 19:15), and places of one point of the plan go together. The ground's level has been read, and no sources were sampled:
 * those would have to be sampled anew.
 */
export function changesWithout(fitted: FittedSurvey, ground: Ground): Float64Array[] {
  const { places, sources, variogram, power } = fitted;
  if (sources) return sourceChanges(sources, places, ground);
  if (fitted.method === 'inverse-distance') return inverseDistanceChanges(places, power, ground);
  return krigedChanges(places, variogram, ground).changes(() => []);
}
