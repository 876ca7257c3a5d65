import { bestPower } from './inverseDistance';
import { HALF_90 } from './interval';
import { choose, currentsExplain, sourcesExplain } from './choose';
import { inverseDistanceError, inverseDistanceWithout } from './inverseDistanceWithout';
import { krigedWithout } from './krigedWithout';
import { meanSquareRatio, rootMeanSquare } from './leaveOneOut';
import { fitRemainder } from './sourceKriging/fitRemainder';
import { fitSources, refitSources } from './sourceKriging/fitSources';
import { observe } from './observations';
import { sampledOrigins, suspected } from './sourceSampling/sampledEvidence';
import { resurveyed } from './sourceSampling/sampleSurvey';
import { sourceShares } from './sourceKriging/sourceShares';
import { sourceWithout } from './sourceKriging/sourceWithout';
import { surveyVariogram } from './surveyVariogram';
import type { Compared, Method, Why } from './choose';
import type { FittedSources } from './sourceKriging/fitRemainder';
import type { MethodChoice, Survey } from './survey';
import type { Place } from './observations';
import type { Predictions } from './leaveOneOut';
import type { Sampled } from './sourceSampling/sampleSurvey';
import type { Whence } from './sourceSampling/sampledEvidence';
import type { Variogram } from './variogram';

/** A survey made into a model: plain data, from which the field at any level and height follows. */
export interface FittedSurvey {
  method: Method;
  why: Why;
  /** Why the default model stands in for a fitted one: too few places, or nothing that varies. */
  defaultModel: null | 'few' | 'flat';
  /** Of ln B; of what the sources leave of it in source kriging. */
  variogram: Variogram;
  /** Of inverse distance. */
  power: number;
  places: readonly Place[];
  /** What the marked sources explain, in source kriging; `explain` where they predict clearly better than kriging alone. */
  sources: (FittedSources & { explain: boolean }) | null;
  /** The sources that may have made the readings, in source sampling. */
  sampled: Sampled | null;
  /** Mean of squared leave-one-out error ÷ its variance: over 1 where the model is too sure; 1 where it cannot be told. */
  meanSquareZ: number;
  /** A method that was asked for and has not been worked out. */
  notYet?: MethodChoice;
}

/** Why the map may be believed. */
export interface Evidence extends Whence {
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
 * inverse distance, strengths of the marked sources, and the choice between the methods by leave-one-out. Source sampling is
 * among them where the survey's sources were sampled (`sampleSurvey`). `progress` is told the share done, 0…1.
 */
export function fitSurvey(
  survey: Survey,
  progress?: (share: number) => void,
  sampled: Sampled | null = null,
): FitResult {
  const places = observe(survey.readings);
  if (places.length < LEAST)
    return { ok: false, problem: { kind: 'too-few-readings', have: places.length, need: LEAST } };
  const plain = surveyVariogram(places);
  progress?.(0.1);
  const error = inverseDistanceError(places);
  const power = bestPower(error);
  progress?.(0.3);
  const kriged = krigedWithout(places, plain.variogram);
  progress?.(survey.sources.length > 0 ? 0.5 : 0.8);
  const krigedError = rootMeanSquare(places, kriged);
  const sources = survey.sources.length > 0 ? fitRemainder(fitSources(places, survey), places) : null;
  // Without a mark source kriging is kriging.
  const explained = sources ? sourceWithout(sources, places) : kriged;
  const compared: Compared[] = [
    { method: 'kriging', looRmseLn: krigedError },
    { method: 'inverse-distance', looRmseLn: krigedError === null ? null : error(power) },
    ...(sources || survey.method === 'source-kriging'
      ? [{ method: 'source-kriging' as const, looRmseLn: rootMeanSquare(places, explained) }]
      : []),
    ...(sampled
      ? [{ method: 'source-sampling' as const, looRmseLn: rootMeanSquare(places, sampled.without) }]
      : []),
  ];
  const choice = choose(survey.method, compared);
  const inUse = choice.method === 'source-sampling' ? sampled : null;
  const used =
    sources && choice.method === 'source-kriging' ? { ...sources, explain: sourcesExplain(compared) } : null;
  const predictions = {
    kriging: () => kriged,
    'inverse-distance': () => inverseDistanceWithout(places, plain.variogram, power),
    'source-kriging': () => explained,
    'source-sampling': () => sampled!.without,
  }[choice.method]();
  const { variogram, defaultModel } = used ?? plain;
  const meanSquareZ = meanSquareRatio(places, predictions);
  return {
    ok: true,
    fitted: {
      ...choice,
      defaultModel: inUse ? null : defaultModel,
      variogram,
      power,
      places,
      sources: used,
      sampled: inUse,
      meanSquareZ,
    },
    evidence: {
      ...evidence(places, predictions),
      compared,
      ...(inUse
        ? sampledOrigins(inUse, survey.sources)
        : { sources: sources ? sourceShares(sources, places, survey.sources) : [], origins: null }),
      unmarked: sampled && suspected(sampled, currentsExplain(compared)),
    },
  };
}

/**
 * The same model with other readings, or with sources that moved: nothing is chosen anew, as while a reading is dragged.
 * Of the sources the strengths alone are found again.
 */
export function withSurvey(fitted: FittedSurvey, survey: Survey): FittedSurvey {
  const places = observe(survey.readings);
  const { sources, sampled } = fitted;
  return {
    ...fitted,
    places,
    sources: sources && { ...sources, model: refitSources(sources.model, places, survey) },
    sampled: sampled && resurveyed(sampled, survey),
  };
}

function evidence(
  places: readonly Place[],
  predictions: Predictions,
): Pick<Evidence, 'readings' | 'looRmseLn' | 'coverage90' | 'rows'> {
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
