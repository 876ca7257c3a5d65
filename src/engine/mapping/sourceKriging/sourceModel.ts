import { columnOf, spotsOf } from './sourceTerms';
import { sumAt } from './fitStrengths';
import type { Place } from '../observations';
import type { SourceTerm, Spots } from './sourceTerms';

/**
 * B̂² = background + Σ strength · r^(−2n): what the marked sources explain. Contributions of unknown relative phase add as
 * squares (emfs.info, "How fields fall with distance"). Plain data.
 */
export interface SourceModel {
  /** Each level's floor above the street, metres. */
  elevations: Readonly<Record<string, number>>;
  terms: readonly SourceTerm[];
  /** µT², the same everywhere. */
  background: number;
}

/** Of all parts, the background's first. */
export const strengthsOf = ({ background, terms }: SourceModel): number[] => [
  background,
  ...terms.map(({ strength }) => strength),
];

/** ½ ln B̂² at each spot. */
export function trendAt(model: SourceModel, spots: Spots): Float64Array {
  const columns = columnsOf(model.terms, spots);
  const strengths = strengthsOf(model);
  return columns[0].map((_, i) => 0.5 * Math.log(sumAt(columns, strengths, i)));
}

/** The places with what the sources leave of ln B in place of it. */
export function remaindersOf(model: SourceModel, places: readonly Place[]): Place[] {
  const trend = trendAt(model, spotsOf(places, model.elevations));
  return places.map((place, i) => ({ ...place, ln: place.ln - trend[i] }));
}

/** What a strength of 1 gives at each spot: first the background, which is the same everywhere. */
export const columnsOf = (terms: readonly Parameters<typeof columnOf>[0][], spots: Spots): Float64Array[] => [
  new Float64Array(spots.xs.length).fill(1),
  ...terms.map((term) => columnOf(term, spots)),
];
