import { remaindersOf, trendAt } from '../mapping/sourceKriging/sourceModel';
import { spotsOf } from '../mapping/sourceKriging/sourceTerms';
import type { FittedSurvey } from '../mapping/fitSurvey';
import type { Point } from '../geometry/point';

/** What becomes of a marked source: its field times `scale` (0: off, 0.5: halved), and where it is moved to. */
export interface SourceChange {
  id: string;
  scale: number;
  path?: readonly Point[];
}

/**
 * The survey as it would be with some marked sources off, weaker or elsewhere: their own terms change and what the map has
 * beside them, the kriged remainder, stays as the readings have it. Null where no source of the survey stands for any of them: the
 * method does not know sources, or the readings leave nothing to these. Strengths are of B², so that they go with the
 * square of the scale. What goes with a switched-off source takes its doubt along; else doubts stay as they were found.
 */
export function whatIf(fitted: FittedSurvey, changes: readonly SourceChange[]): FittedSurvey | null {
  const { sources, places } = fitted;
  if (!sources) return null;
  const { model, doubt } = sources;
  const changeOf = (id: string) => changes.find((change) => change.id === id);
  if (!model.terms.some(({ id, strength }) => strength > 0 && changeOf(id))) return null;

  const changed = model.terms.map((term) => {
    const change = changeOf(term.id);
    if (!change) return term;
    return { ...term, path: change.path ?? term.path, strength: term.strength * change.scale ** 2 };
  });
  const isOff = (k: number) => k > 0 && changeOf(model.terms[k - 1].id)?.scale === 0;
  // The background comes first, and has strength now.
  const parts = [...doubt.hidden.keys()].filter((k) => !isOff(k));
  // Where the readings need no background, one standard deviation of what they leave room for stays when a source goes.
  const unheard = model.background === 0;
  const then = {
    ...model,
    background: unheard ? doubt.hidden[0] : model.background,
    terms: changed.filter((_, i) => !isOff(i + 1)),
  };
  const n = doubt.hidden.length;
  const trend = trendAt(then, spotsOf(places, model.elevations));
  return {
    ...fitted,
    places: remaindersOf(model, places).map((place, i) => ({ ...place, ln: place.ln + trend[i] })),
    sources: {
      ...sources,
      model: then,
      doubt: {
        hidden: parts.map((k) => (k === 0 ? 0 : doubt.hidden[k])),
        covariance: Float64Array.from(parts.flatMap((k) => parts.map((l) => doubt.covariance[k * n + l]))),
      },
    },
  };
}
