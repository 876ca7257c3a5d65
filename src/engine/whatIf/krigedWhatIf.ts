import { remaindersOf, trendAt } from '../mapping/sourceKriging/sourceModel';
import { spotsOf } from '../mapping/sourceKriging/sourceTerms';
import type { FittedSources } from '../mapping/sourceKriging/fitRemainder';
import type { FittedSurvey } from '../mapping/fitSurvey';
import type { SourceChange } from './sourceChange';

/**
 * A map of source kriging with some terms changed. Strengths are of B², so that they go with the square of the scale. How unsure
 * they are stays as the readings leave it: where the background may have been the source's, the map without it is open too.
 */
export function krigedWhatIf<T extends FittedSurvey>(
  fitted: T,
  sources: FittedSources & { explain: boolean },
  changes: readonly SourceChange[],
): T {
  const { places } = fitted;
  const { model, doubt } = sources;
  const changeOf = (id: string) => changes.find((change) => change.id === id);
  const factors = model.terms.map(({ id }) => (changeOf(id)?.scale ?? 1) ** 2);
  // Where the readings need no background, one standard deviation of what they leave room for stays when a source goes.
  const isBare = model.background === 0 && factors.includes(0);
  const then = {
    ...model,
    background: isBare ? doubt.hidden[0] : model.background,
    terms: model.terms.map((term, i) => ({
      ...term,
      path: changeOf(term.id)?.path ?? term.path,
      strength: term.strength * factors[i],
    })),
  };
  const trend = trendAt(then, spotsOf(places, model.elevations));
  return {
    ...fitted,
    places: remaindersOf(model, places).map((place, i) => ({ ...place, ln: place.ln + trend[i] })),
    sources: {
      ...sources,
      model: then,
      // The background comes first.
      doubt: { ...doubt, hidden: doubt.hidden.map((value, k) => (k === 0 ? value : value * factors[k - 1])) },
      asRead: sources.asRead ?? { model, hidden: doubt.hidden },
    },
  };
}

/** Whether the readings give anything to a source. */
export const heardInKriging =
  ({ model }: FittedSources) =>
  (id: string): boolean =>
    model.terms.some((term) => term.id === id && term.strength > 0);
