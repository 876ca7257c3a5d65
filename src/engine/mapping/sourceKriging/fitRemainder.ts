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
}

export function fitRemainder(model: SourceModel, places: readonly Place[]): FittedSources {
  const remainders = remaindersOf(model, places);
  const { variogram, defaultModel } = surveyVariogram(remainders);
  return { model, variogram, defaultModel, doubt: strengthDoubt(model, remainders, variogram) };
}
