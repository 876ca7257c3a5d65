import { assessHome, type AssessReply } from './assessHome';
import { sampleSurvey } from './mapping/sourceSampling/sampleSurvey';
import { wantsSampling } from './mapping/sourceSampling/wantsSampling';
import type { AssessRequest } from './assess';

/** Of the time a whole answer takes, sampling takes about this share. */
const SAMPLING = 0.7;

/**
 * Everything the engine has to say of one home with its sources sampled first, where its survey wants that: seconds of work,
 * where `assessHome` alone answers at once by the other methods. `progress` is told the share done, 0…1.
 */
export function assessSampled(request: AssessRequest, progress?: (share: number) => void): AssessReply {
  if (!wantsSampling(request.survey)) return assessHome(request, progress);
  const sampled = sampleSurvey(request.survey, progress && ((share) => progress(SAMPLING * share)));
  return assessHome(request, progress && ((share) => progress(SAMPLING + (1 - SAMPLING) * share)), sampled);
}
