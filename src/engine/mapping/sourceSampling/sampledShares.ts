import { heardSamples, type HeardSource } from './heardSamples';
import { weightedQuantile } from './weightedQuantile';
import type { MarkedSource } from '../survey';
import type { SamplingQuestion } from './question';
import type { SourceShare } from '../sourceKriging/sourceShares';
import type { SourceSamples } from './samples';

/** What gives the field at the readings, as the samples have it: shares of B², 90 % intervals, 0…1. */
export interface SampledShares {
  /** Of each marked source, in their order. */
  sources: SourceShare[];
  /** Of all that lies outside, marked or not, with the far sources' ambient field. */
  outside: [number, number];
  /** Of all that is the house's own, marked or not. What was marked as of unknown origin is in neither. */
  house: [number, number];
}

/**
 * A mark is contradicted where fewer samples have it: seven or eight in ten have one of which the readings say nothing, as before
 * any reading; on known homes right marks stay above four in ten. The project's choice.
 */
const CONTRADICTED = 0.3;

/**
 * Samples are a little too sure of what lies outside: by so much of ln (share / (1 − share)) at each end nine in ten known homes
 * of two builds come inside.
 */
const MARGIN = 0.1;

/**
 * Shares of B² among all that a sample has, mean over the places of the question; 5 and 95 % over the samples. `sources` are
 * those of which the question's marks were made, in the same order.
 */
export function sampledShares(
  question: SamplingQuestion,
  samples: SourceSamples,
  sources: readonly MarkedSource[],
): SampledShares {
  const heard = heardSamples(question, samples);
  const weights = heard.map(({ weight }) => weight);
  const interval = (of: (source: HeardSource) => boolean, ambient = false): [number, number] => {
    const shares = heard.map(({ sources: all, ambientSquare, total }) => {
      const own = all.filter(of);
      const mean = total.reduce((sum, whole, i) => {
        const square = own.reduce((squares, { squares: at }) => squares + at[i], ambient ? ambientSquare : 0);
        return sum + square / whole;
      }, 0);
      return mean / total.length;
    });
    return [weightedQuantile(shares, weights, 0.05), weightedQuantile(shares, weights, 0.95)];
  };
  const originOf = ({ slot: { of } }: HeardSource): MarkedSource['origin'] => {
    if (typeof of === 'string') return of === 'street' ? 'outside' : 'house';
    return sources[question.marked.indexOf(of)]?.origin ?? 'unknown';
  };
  return {
    sources: sources.map(({ id }, k) => {
      const own = ({ slot }: HeardSource) => slot.of === question.marked[k];
      const presence = heard.reduce((sum, { weight, sources: all }) => sum + (all.some(own) ? weight : 0), 0);
      return { id, falloff: null, fitted: false, share: interval(own), silent: presence < CONTRADICTED };
    }),
    outside: widened(interval((source) => originOf(source) === 'outside', true)),
    house: widened(interval((source) => originOf(source) === 'house')),
  };
}

function widened([low, high]: [number, number]): [number, number] {
  const moved = (share: number, by: number) => share / (share + (1 - share) * Math.exp(-by));
  return [moved(low, -MARGIN), moved(high, MARGIN)];
}
