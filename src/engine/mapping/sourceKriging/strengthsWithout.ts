import { columnsOf, strengthsOf } from './sourceModel';
import { fitStrengths } from './fitStrengths';
import { knownOf } from './fitSources';
import { samePoint } from '../leaveOneOut';
import { spotsOf } from './sourceTerms';
import type { FittedSources } from './fitRemainder';
import type { Place } from '../observations';

/** From the strengths of all places to those without one is a short way. */
const ROUNDS = 6;

/** Strengths found anew without a place, and how far each went, in what `changesOf` counts by. */
export interface StrengthsWithout {
  found: Float64Array;
  steps: readonly number[];
}

/** The strengths without each place and what else is read at its point of the level; exponents are kept. */
export function strengthsWithout(
  { model, doubt }: FittedSources,
  places: readonly Place[],
): StrengthsWithout[] {
  const columns = columnsOf(model.terms, spotsOf(places, model.elevations));
  const known = knownOf(places, model.terms);
  const strengths = strengthsOf(model);
  const start = Float64Array.from(strengths);
  return places.map((place, i) => {
    const skip = new Set(samePoint(places, i).filter((j) => places[j].level === place.level));
    const found = fitStrengths(columns, known, { skip, start, rounds: ROUNDS });
    const steps = strengths.map((strength, k) =>
      strength > 0 ? found[k] / strength - 1 : found[k] / doubt.hidden[k],
    );
    return { found, steps };
  });
}
