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
  /** Sources that are likely and not marked, by the samples, whatever the method; null where nothing was sampled. */
  unmarked: UnmarkedSource[] | null;
}

/** What the samples of a survey say of its marked sources, in the survey's order, and of outside and house. */
export function sampledOrigins(
  { question, samples }: Sampled,
  marked: readonly MarkedSource[],
): Pick<Whence, 'sources' | 'origins'> {
  const { sources, ...origins } = sampledShares(question, samples, marked);
  return { sources, origins };
}

/**
 * What the samples say of unmarked sources. Where currents do not `explain` the readings nothing is suspected: samples can put
 * a smooth field down to currents too.
 */
export const suspected = ({ question, samples, elevations }: Sampled, explain: boolean): UnmarkedSource[] =>
  explain ? unmarkedSources(question, samples, elevations) : [];
