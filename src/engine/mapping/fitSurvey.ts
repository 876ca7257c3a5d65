import { bestPower } from './inverseDistance';
import { HALF_90 } from './interval';
import { choose } from './choose';
import { inverseDistanceError, inverseDistanceWithout } from './inverseDistanceWithout';
import { krigedWithout } from './krigedWithout';
import { meanSquareRatio, rootMeanSquare } from './leaveOneOut';
import { observe } from './observations';
import { surveyVariogram } from './surveyVariogram';
import type { Compared, Method, Why } from './choose';
import type { MethodChoice, Survey } from './survey';
import type { Place } from './observations';
import type { Predictions } from './leaveOneOut';
import type { Variogram } from './variogram';

/** A survey made into a model: plain data, from which the field at any level and height follows. */
export interface FittedSurvey {
  method: Method;
  why: Why;
  /** Why the default model stands in for a fitted one: too few places, or nothing that varies. */
  defaultModel: null | 'few' | 'flat';
  variogram: Variogram;
  /** Of inverse distance. */
  power: number;
  places: readonly Place[];
  /** Mean of squared leave-one-out error ÷ its variance: over 1 where the model is too sure; 1 where it cannot be told. */
  meanSquareZ: number;
  /** A method that was asked for and does not exist. */
  notYet?: MethodChoice;
}

/** Why the map may be believed. */
export interface Evidence {
  /** How many were used. */
  readings: number;
  /** Of the method used; null where no reading can be predicted from the others. */
  looRmseLn: number | null;
  /** Share of places whose reading lies within the 90 % interval predicted without it. */
  coverage90: number | null;
  compared: Compared[];
  /** One a place: what was read and what would have been predicted without it, µT. */
  rows: EvidenceRow[];
}

export interface EvidenceRow {
  ids: readonly string[];
  level: string;
  at: readonly [number, number];
  read: number;
  predicted: number;
  low: number;
  high: number;
}

export type FitResult =
  | { ok: true; fitted: FittedSurvey; evidence: Evidence }
  | { ok: false; problem: { kind: 'too-few-readings'; have: number; need: number } };

/** Fewer places than this make no map. */
const LEAST = 3;

/**
 * The model of a survey: readings made places, variogram fitted over all levels together (pairs within a level), power of
 * inverse distance and the choice between the two methods by leave-one-out. `progress` is told the share done, 0…1.
 */
export function fitSurvey(survey: Survey, progress?: (share: number) => void): FitResult {
  const places = observe(survey.readings);
  if (places.length < LEAST)
    return { ok: false, problem: { kind: 'too-few-readings', have: places.length, need: LEAST } };
  const { variogram, defaultModel } = surveyVariogram(places);
  progress?.(0.1);
  const error = inverseDistanceError(places);
  const power = bestPower(error);
  progress?.(0.3);
  const kriged = krigedWithout(places, variogram);
  progress?.(0.8);
  const krigedError = rootMeanSquare(places, kriged);
  const compared: Compared[] = [
    { method: 'kriging', looRmseLn: krigedError },
    { method: 'inverse-distance', looRmseLn: krigedError === null ? null : error(power) },
  ];
  const choice = choose(survey.method, compared);
  const predictions = choice.method === 'kriging' ? kriged : inverseDistanceWithout(places, variogram, power);
  const meanSquareZ = meanSquareRatio(places, predictions);
  return {
    ok: true,
    fitted: { ...choice, defaultModel, variogram, power, places, meanSquareZ },
    evidence: { ...evidence(places, predictions), compared },
  };
}

/** The same model with other readings: nothing is fitted or chosen anew, as while a reading is dragged. */
export const withReadings = (fitted: FittedSurvey, readings: Survey['readings']): FittedSurvey => ({
  ...fitted,
  places: observe(readings),
});

function evidence(places: readonly Place[], predictions: Predictions): Omit<Evidence, 'compared'> {
  let within = 0;
  const rows: EvidenceRow[] = [];
  places.forEach((place, i) => {
    const prediction = predictions[i];
    if (!prediction || place.limited) return;
    const half = HALF_90 * Math.sqrt(prediction.variance);
    if (Math.abs(place.ln - prediction.predicted) <= half) within++;
    rows.push({
      ids: place.ids,
      level: place.level,
      at: [place.x, place.y],
      read: Math.exp(place.ln),
      predicted: Math.exp(prediction.predicted),
      low: Math.exp(prediction.predicted - half),
      high: Math.exp(prediction.predicted + half),
    });
  });
  return {
    readings: places.reduce((sum, { ids }) => sum + ids.length, 0),
    looRmseLn: rootMeanSquare(places, predictions),
    coverage90: rows.length > 0 ? within / rows.length : null,
    rows,
  };
}
