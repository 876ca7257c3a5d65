import { ALIKE } from './leaveOneOut';
import type { MethodChoice } from './survey';

/** The ways of making a map that there are. */
export type Method = Exclude<MethodChoice, 'auto'>;

/** Why a method was used. */
export type Why =
  | { kind: 'asked' }
  /** Least leave-one-out error of `of` methods. */
  | { kind: 'least-error'; of: number }
  /** Source kriging erred less, but not clearly: what was best of the others is used. */
  | { kind: 'marks-unclear' }
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
 * Source kriging is taken where its error is this share of the others' least, or less. Marks in the wrong place may err a
 * little less by luck, and then mislead where nobody read; known homes with marks put anywhere show where luck ends.
 */
const CLEARLY = 0.95;

/** The method asked for, or that of the least leave-one-out error; kriging where they are alike. */
export function choose(asked: MethodChoice, compared: readonly Compared[]): Choice {
  const known = compared.find(({ method }) => method === asked);
  if (known) return { method: known.method, why: { kind: 'asked' } };
  const best = leastError(compared);
  return asked === 'auto' ? best : { ...best, notYet: asked };
}

function leastError(compared: readonly Compared[]): Choice {
  const errorOf = ({ method, looRmseLn }: Compared) =>
    (looRmseLn ?? Infinity) / (method === 'source-kriging' ? CLEARLY : 1);
  const least = Math.min(...compared.map(errorOf));
  if (!Number.isFinite(least)) return { method: 'kriging', why: { kind: 'not-compared' } };
  const best = compared.filter((one) => errorOf(one) <= least + ALIKE);
  const { method } = best.find(({ method }) => method === 'kriging') ?? best[0];
  const better = compared.some(
    ({ looRmseLn }) => (looRmseLn ?? Infinity) < errorOfMethod(compared, method) - ALIKE,
  );
  return { method, why: better ? { kind: 'marks-unclear' } : { kind: 'least-error', of: compared.length } };
}

const errorOfMethod = (compared: readonly Compared[], method: Method): number =>
  compared.find((one) => one.method === method)?.looRmseLn ?? Infinity;

/** Whether the marked sources predict what is left out clearly better than kriging without them. */
export const sourcesExplain = (compared: readonly Compared[]): boolean =>
  errorOfMethod(compared, 'source-kriging') <= CLEARLY * errorOfMethod(compared, 'kriging');

/** Whether currents and appliances predict what is left out better than a smooth field does. */
export const currentsExplain = (compared: readonly Compared[]): boolean =>
  errorOfMethod(compared, 'source-sampling') < errorOfMethod(compared, 'kriging');
