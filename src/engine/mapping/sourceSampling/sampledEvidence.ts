import { sampledShares } from './sampledShares';
import { unmarkedSources, type UnmarkedSource } from './unmarkedSources';
import type { MarkedSource } from '../survey';
import type { Sampled } from './sampleSurvey';
import type { SourceShare } from '../sourceKriging/sourceShares';

/** Where the field comes from, as far as it can be told. */
export interface Whence {
  /** What each marked source gives. */
  sources: SourceShare[];
  /** Shares of B² at the readings from outside and of the house's own; null where the method does not tell them apart. */
  origins: { outside: [number, number]; house: [number, number] } | null;
  /** Sources that are likely and not marked. */
  unmarked: UnmarkedSource[];
}

/**
 * What the samples of a survey say of its sources, marked (in the survey's order) and unmarked. Where currents do not `explain` the
 * readings nothing is suspected: samples can put a smooth field down to currents too.
 */
export function sampledEvidence(
  { question, samples, elevations }: Sampled,
  marked: readonly MarkedSource[],
  explain: boolean,
): Whence {
  const { sources, ...origins } = sampledShares(question, samples, marked);
  return { sources, origins, unmarked: explain ? unmarkedSources(question, samples, elevations) : [] };
}
