import { HALF_90 } from '../interval';
import { columnsOf, strengthsOf } from './sourceModel';
import { changesOf } from './strengthDoubt';
import { sumAt } from './fitStrengths';
import { spotsOf } from './sourceTerms';
import type { Exponent } from './sourceTerms';
import type { FittedSources } from './fitRemainder';
import type { MarkedSource } from '../survey';
import type { Place } from '../observations';

/** What a marked source gives at the readings. */
export interface SourceShare {
  id: string;
  /** How B falls with distance, 1/r to this power; null where no one power does. `fitted` where the readings chose it. */
  falloff: Exponent | null;
  fitted: boolean;
  /** Share of B² among the parts, mean over the places; 90 % interval, 0…1. */
  share: [number, number];
  /** Nothing is heard of it anywhere, though most sources of its kind would be: the readings contradict the mark. */
  silent: boolean;
}

/** A share of B² that nobody could tell from none. */
const NOTHING = 0.01;

/** A share is never surer to lie at an end than this, so that an interval about it can be drawn. */
const EDGE = 1e-6;

/**
 * Shares of what the sources and the background explain, averaged over the places. The interval is by the doubt of the
 * strengths, linear about the fit (JCGM 100:2008, 5.2), on the scale ln (share / (1 − share)), where no end is passed.
 */
export function sourceShares(
  { model, doubt }: FittedSources,
  places: readonly Place[],
  sources: readonly MarkedSource[],
): SourceShare[] {
  const n = doubt.hidden.length;
  const spots = spotsOf(places, model.elevations);
  const columns = columnsOf(model.terms, spots);
  const sums = places.map((_, i) => sumAt(columns, strengthsOf(model), i));
  const loudest = (k: number, strength: number) =>
    Math.max(...places.map((_, i) => (strength * columns[k][i]) / sums[i]));
  const parts = changesOf(model, doubt.hidden, spots).map((change, k) =>
    // What could be heard of a silent part is a share of its own: B² grows by a factor e^(2 · change).
    change.map((value) => (doubt.hidden[k] > 0 ? 1 - Math.exp(-2 * value) : 2 * value)),
  );
  const mean = (of: (i: number) => number) => places.reduce((sum, _, i) => sum + of(i), 0) / places.length;
  return model.terms.map(({ id, exponent, strength, usual }, index) => {
    const k = index + 1;
    const none = strength === 0;
    const share = none ? 0 : mean((i) => parts[k][i]);
    const slopes = parts.map((part, l) =>
      none ? (l === k ? mean((i) => part[i]) : 0) : mean((i) => parts[k][i] * ((l === k ? 1 : 0) - part[i])),
    );
    let variance = 0;
    for (let a = 0; a < n; a++)
      for (let b = 0; b < n; b++) variance += slopes[a] * doubt.covariance[a * n + b] * slopes[b];
    const source = sources.find((one) => one.id === id);
    return {
      id,
      falloff: exponent,
      fitted: source?.falloff === 'fit',
      share: none ? [0, Math.min(1, HALF_90 * Math.sqrt(variance))] : between(share, Math.sqrt(variance)),
      silent: loudest(k, strength) < NOTHING && loudest(k, usual) > 1,
    };
  });
}

function between(share: number, sd: number): [number, number] {
  const middle = Math.min(1 - EDGE, Math.max(EDGE, share));
  const logit = Math.log(middle / (1 - middle));
  const half = (HALF_90 * sd) / (middle * (1 - middle));
  const back = (value: number) => 1 / (1 + Math.exp(-value));
  return [back(logit - half), back(logit + half)];
}
