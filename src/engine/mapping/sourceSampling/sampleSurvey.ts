import { FULL_EFFORT, samplingQuestion, type SamplingQuestion } from './question';
import { sampledWithout } from './sampledWithout';
import { sampleSources } from './sampleSources';
import type { ChangedMarks } from './changedMarks';
import type { Predictions } from '../leaveOneOut';
import type { SourceSamples } from './samples';
import type { Survey } from '../survey';

/** A survey whose sources were sampled: plain data, from which the field follows. */
export interface Sampled {
  question: SamplingQuestion;
  samples: SourceSamples;
  elevations: Survey['elevations'];
  /** Each place predicted without it. */
  without: Predictions;
  /** What is made of the marks, where that is asked; left out: they are as they were when the readings were taken. */
  changed?: ChangedMarks;
}

/** The same home has the same samples, on the page as at the terminal. */
const SEED = 7;

/** Of the work, sampling takes this share, and leaving each place out the rest. */
const SAMPLING = 0.65;

/**
 * Samples of the sources that may have made a survey's readings, from the prior alone or from the samples `start` of nearly
 * the same survey; `progress` is told the share done. Whoever wants it no longer ends its worker.
 */
export function sampleSurvey(
  survey: Survey,
  progress?: (share: number) => void,
  start?: SourceSamples,
): Sampled {
  const question = samplingQuestion(survey, { seed: SEED, effort: FULL_EFFORT });
  const samples = sampleSources({ ...question, start }, progress && ((share) => progress(SAMPLING * share)))!;
  const rest = progress && ((share: number) => progress(SAMPLING + (1 - SAMPLING) * share));
  return { question, samples, elevations: survey.elevations, without: sampledWithout(question, rest) };
}

/** Of so many samples one is kept while a hand moves things: a tenth of the work for a picture that settles a little. */
const THINNED = 10;

/** The same samples, fewer, before other readings or marks. */
export const resurveyed = ({ question, samples, without }: Sampled, survey: Survey): Sampled => {
  const kept = samples.samples.filter((_, i) => i % THINNED === 0);
  const total = kept.reduce((sum, { weight }) => sum + weight, 0);
  return {
    question: samplingQuestion(survey, question),
    samples: { ...samples, samples: kept.map((sample) => ({ ...sample, weight: sample.weight / total })) },
    elevations: survey.elevations,
    without,
  };
};
