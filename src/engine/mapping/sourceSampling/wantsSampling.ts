import { observe } from '../observations';
import type { Survey } from '../survey';

/** Places that are sampled: under the least there is nothing to explain; past the most a sampling takes minutes. */
const LEAST = 3;
const MOST = 150;

/** Whether a survey is to be sampled: the method was asked for or left open, and there are neither too few places nor too many. */
export function wantsSampling({ method, readings }: Survey): boolean {
  if (method !== 'auto' && method !== 'source-sampling') return false;
  const places = observe(readings).length;
  return places >= LEAST && places <= MOST;
}
