import { wantsSampling } from '../../engine/mapping/sourceSampling/wantsSampling';
import type { Sampled } from '../../engine/mapping/sourceSampling/sampleSurvey';
import type { Survey } from '../../engine/mapping/survey';
import { sameValue } from '../../engine/sameValue';
import type { Services } from '../services';
import { createEngineClient } from './engineClient';

/** A survey to be sampled; `afresh`: from its readings alone, as anybody's machine does it, and not from earlier samples. */
interface ToSample {
  survey: Survey;
  afresh: boolean;
}

export interface SamplingTask {
  /** The samples of this survey, where they are known. */
  of(wanted: ToSample): Sampled | null;
  /** Whether this survey is still to be sampled: it wants to be, is not, and nobody stopped it. */
  lacks(wanted: ToSample): boolean;
  /** Whether it is to be sampled from the samples of nearly the same survey. */
  goesOn(wanted: ToSample): boolean;
  start(wanted: ToSample, listener: { progress(share: number): void; done(): void; failed(): void }): void;
  /** Whether this very survey is being sampled. */
  working(wanted: ToSample): boolean;
  /** Ends the work; for good: this survey is not sampled again, and whoever waits for it is told that it failed. */
  stop(forGood: boolean): void;
  /** Its samples are there and not wanted. */
  decline(wanted: ToSample): void;
  /** A survey that was stopped for good, or declined, may be sampled after all. */
  reconsider(): void;
  /** Another home: its samples have nothing to do with those of the last. */
  forget(): void;
}

/** A survey with no more readings changed than this is nearly the same: its map is not to be shaken by chance. */
const FEW = 3;

/** So many surveys' samples are remembered: what is undone has the very map it had. */
const KEPT = 8;

/** Samples the sources of a survey in a worker of its own, since it takes seconds, and remembers the last ones. */
export function createSamplingTask({ samplingFactory }: Pick<Services, 'samplingFactory'>): SamplingTask {
  const client = createEngineClient(samplingFactory);
  /** The latest first. */
  let known: (ToSample & { sampled: Sampled })[] = [];
  let asked: ToSample | null = null;
  let declined: Survey | null = null;
  let tellFailed = () => {};

  // Samples do not ask whether their method was chosen or left open.
  const same = (a: Survey, b: Survey) => sameValue({ ...a, method: b.method }, b);
  const answers = (a: ToSample | null, { survey, afresh }: ToSample) =>
    a !== null && (a.afresh || !afresh) && same(a.survey, survey);

  const wants = ({ survey }: ToSample) => wantsSampling(survey) && !(declined && same(declined, survey));

  const of = (wanted: ToSample) =>
    wants(wanted) ? (known.find((one) => answers(one, wanted))?.sampled ?? null) : null;

  const lacks = (wanted: ToSample) => wants(wanted) && of(wanted) === null;

  /** Of nearly the same survey. */
  const nearest = ({ survey, afresh }: ToSample) =>
    afresh ? undefined : known.find((one) => nearlySame(one.survey, survey));

  return {
    of,
    lacks,
    goesOn: (wanted) => lacks(wanted) && nearest(wanted) !== undefined,
    working: (wanted) => answers(asked, wanted),
    start(wanted, { progress, done, failed }) {
      if (answers(asked, wanted)) return;
      if (asked) client.cancel();
      const { survey } = wanted;
      const near = nearest(wanted);
      const making = { survey, afresh: !near };
      asked = making;
      tellFailed = failed;
      client.put(
        'sample',
        { survey, start: near?.sampled.samples },
        {
          progress,
          done(sampled) {
            asked = null;
            known = [{ ...making, sampled }, ...known].slice(0, KEPT);
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
      if (!asked) return;
      const { survey } = asked;
      asked = null;
      // A worker in the middle of a sampling hears nothing: it is ended, and the next survey starts a fresh one.
      client.cancel();
      if (!forGood) return;
      declined = survey;
      tellFailed();
    },
    decline({ survey }) {
      declined = survey;
    },
    reconsider() {
      declined = null;
    },
    forget() {
      known = [];
      declined = null;
    },
  };
}

/** The same walls and marks, and all but a few of the readings. */
function nearlySame(a: Survey, b: Survey): boolean {
  const apart = (one: Survey, other: Survey) =>
    one.readings.filter((reading) => !other.readings.some((twin) => sameValue(twin, reading))).length;
  const bare = { readings: [], method: b.method };
  return sameValue({ ...a, ...bare }, { ...b, ...bare }) && Math.max(apart(a, b), apart(b, a)) <= FEW;
}
