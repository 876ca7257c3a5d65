import { wantsSampling } from '../../engine/mapping/sourceSampling/sampleSurvey';
import type { Sampled } from '../../engine/mapping/sourceSampling/sampleSurvey';
import type { Survey } from '../../engine/mapping/survey';
import { sameValue } from '../sameValue';
import type { Services } from '../services';
import { createEngineClient } from './engineClient';

export interface SamplingTask {
  /** The samples of this survey, where they are known. */
  of(survey: Survey): Sampled | null;
  /** Whether this survey is still to be sampled: it wants to be, is not, and nobody stopped it. */
  lacks(survey: Survey): boolean;
  start(survey: Survey, listener: { progress(share: number): void; done(): void; failed(): void }): void;
  /** Whether this very survey is being sampled. */
  working(survey: Survey): boolean;
  /** Ends the work; for good: this survey is not sampled again. */
  stop(forGood: boolean): void;
}

/** Samples the sources of a survey in a worker of its own, since it takes seconds, and remembers the last ones. */
export function createSamplingTask({ samplingFactory }: Pick<Services, 'samplingFactory'>): SamplingTask {
  const client = createEngineClient(samplingFactory);
  let known: { survey: Survey; sampled: Sampled } | null = null;
  let asked: Survey | null = null;
  let declined: Survey | null = null;

  // Samples do not ask whether their method was chosen or left open.
  const same = (a: Survey | null | undefined, b: Survey) => !!a && sameValue({ ...a, method: b.method }, b);

  return {
    of: (survey) => (wantsSampling(survey) && same(known?.survey, survey) ? known!.sampled : null),
    lacks: (survey) => wantsSampling(survey) && !same(known?.survey, survey) && !same(declined, survey),
    working: (survey) => same(asked, survey),
    start(survey, { progress, done, failed }) {
      if (same(asked, survey)) return;
      if (asked) client.cancel();
      asked = survey;
      client.put(
        'sample',
        { survey },
        {
          progress,
          done(sampled) {
            asked = null;
            known = { survey, sampled };
            done();
          },
          problem() {
            asked = null;
            // The map that was there at once stays; asking again would fail again.
            declined = survey;
            failed();
          },
        },
      );
    },
    stop(forGood) {
      if (forGood && asked) declined = asked;
      // A worker in the middle of a sampling hears nothing: it is ended, and the next survey starts a fresh one.
      if (asked) client.cancel();
      asked = null;
    },
  };
}
