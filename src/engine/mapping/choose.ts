import { ALIKE } from './leaveOneOut';
import type { MethodChoice } from './survey';

/** The ways of making a map that there are. */
export type Method = Exclude<MethodChoice, 'auto'>;

/** Why a method was used. */
export type Why =
  | { kind: 'asked' }
  /** Least leave-one-out error of `of` methods. */
  | { kind: 'least-error'; of: number }
  /** Source sampling predicts about as well as the methods that know no source, and draws nearer between the readings. */
  | { kind: 'samples-hold' }
  /** Another method erred less, but not clearly: what was best of the rest is used. */
  | { kind: 'unclear'; other: Method }
  /** No reading can be predicted from the others, so nothing could be compared. */
  | { kind: 'not-compared' };

export interface Choice {
  method: Method;
  why: Why;
  /** A method that was asked for and has not been worked out: the automatic choice stands in. */
  notYet?: MethodChoice;
}

/** Each method's root mean square of prediction less reading in ln B, leaving out one place at a time. */
export interface Compared {
  method: Method;
  looRmseLn: number | null;
}

/**
 * A method is taken in kriging's place where its error is this share of the least of the rest, or less. Marks in the wrong
 * place may err a little less by luck, and then mislead where nobody read; where fields are smooth, inverse distance errs
 * more between readings than at them. Known homes show where luck ends: `npm run bench -- accuracy`.
 */
const CLEARLY = { 'source-kriging': 0.95, 'inverse-distance': 0.9, kriging: 1 };

/**
 * Source sampling is taken where it errs this much as the better of kriging and inverse distance, or less. Nothing marked, it
 * may err a little more: it predicts from five sixths of the readings and with few sweeps, and between readings known homes
 * have it nearer than that tells. With marks it has to win clearly, as source kriging has.
 */
const SAMPLES = { unmarked: 1.05, marked: CLEARLY['source-kriging'] };

/** The method asked for, or the one whose predictions of the left-out readings deserve it. */
export function choose(asked: MethodChoice, compared: readonly Compared[]): Choice {
  const known = compared.find(({ method }) => method === asked);
  if (known) return { method: known.method, why: { kind: 'asked' } };
  const best = deserving(compared);
  return asked === 'auto' ? best : { ...best, notYet: asked };
}

function deserving(compared: readonly Compared[]): Choice {
  const error = (method: Method) => errorOf(compared, method);
  const unaware = Math.min(error('kriging'), error('inverse-distance'));
  if (!Number.isFinite(unaware)) return { method: 'kriging', why: { kind: 'not-compared' } };
  const sampled = error('source-sampling');
  const least = compared.reduce(
    (best, { method }) => (error(method) < error(best) ? method : best),
    'kriging' as Method,
  );
  const marked = compared.some(({ method }) => method === 'source-kriging');
  const enough = SAMPLES[marked ? 'marked' : 'unmarked'] * unaware;
  const method = sampled <= enough ? 'source-sampling' : clearest(compared);
  if (error(method) <= error(least) + ALIKE)
    return { method, why: { kind: 'least-error', of: compared.length } };
  return {
    method,
    why: method === 'source-sampling' ? { kind: 'samples-hold' } : { kind: 'unclear', other: least },
  };
}

/** Of the rest the method of the least error, handicapped by how clearly it must win. */
function clearest(compared: readonly Compared[]): keyof typeof CLEARLY {
  const handicapped = (method: keyof typeof CLEARLY) => errorOf(compared, method) / CLEARLY[method];
  return (['inverse-distance', 'source-kriging'] as const).reduce<keyof typeof CLEARLY>(
    (best, method) => (handicapped(method) < handicapped(best) - ALIKE ? method : best),
    'kriging',
  );
}

const errorOf = (compared: readonly Compared[], method: Method): number =>
  compared.find((one) => one.method === method)?.looRmseLn ?? Infinity;

/** Whether the marked sources predict what is left out clearly better than kriging without them. */
export const sourcesExplain = (compared: readonly Compared[]): boolean =>
  errorOf(compared, 'source-kriging') <= CLEARLY['source-kriging'] * errorOf(compared, 'kriging');

/** Whether currents and appliances predict what is left out better than a smooth field does. */
export const currentsExplain = (compared: readonly Compared[]): boolean =>
  errorOf(compared, 'source-sampling') < errorOf(compared, 'kriging');
