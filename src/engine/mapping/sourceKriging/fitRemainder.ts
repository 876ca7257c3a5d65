import { DEFAULT_VARIOGRAM } from '../variogram';
import { remaindersOf } from './sourceModel';
import { strengthDoubt } from './strengthDoubt';
import { surveyVariogram } from '../surveyVariogram';
import type { Place } from '../observations';
import type { SourceModel } from './sourceModel';
import type { StrengthDoubt } from './strengthDoubt';
import type { SurveyVariogram } from '../surveyVariogram';

/** What source kriging takes from a survey: what the sources explain, the variogram of what they leave, and the doubt. */
export interface FittedSources extends SurveyVariogram {
  model: SourceModel;
  doubt: StrengthDoubt;
  /** The sources as they were when the readings were taken, where the model has them otherwise; the same parts. */
  asRead?: { model: SourceModel; hidden: StrengthDoubt['hidden'] };
}

/** Variance of ln B that no sum of squares gets under, however exact the meter: one per cent of the field. */
const LEAST = 1e-4;

export function fitRemainder(model: SourceModel, places: readonly Place[]): FittedSources {
  const remainders = remaindersOf(model, places);
  const found = variogramOf(model, remainders);
  return { ...found, model, doubt: strengthDoubt(model, remainders, found.variogram) };
}

/**
 * The variogram of the remainder. Where the sources explain all but what the meter adds, nothing is left to be fitted; no
 * more is claimed then than that the field follows them as well as the meter can tell.
 */
function variogramOf({ terms }: SourceModel, remainders: readonly Place[]): SurveyVariogram {
  const heard = terms.filter(({ strength }) => strength > 0);
  const fitted = surveyVariogram(remainders, heard.length);
  if (fitted.defaultModel === 'few') return fitted;
  const told = remainders.reduce((sum, { variance }) => sum + variance, 0) / remainders.length;
  const least = Math.max(LEAST, told);
  if (fitted.defaultModel === 'flat')
    return { variogram: { ...DEFAULT_VARIOGRAM, sill: least }, defaultModel: null };
  const { nugget, sill } = fitted.variogram;
  return { ...fitted, variogram: { ...fitted.variogram, sill: Math.max(sill, least - nugget) } };
}
