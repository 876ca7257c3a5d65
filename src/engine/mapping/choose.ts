import { ALIKE } from './leaveOneOut';
import type { MethodChoice } from './survey';

/** The ways of making a map that there are. */
export type Method = 'inverse-distance' | 'kriging';

/** Why a method was used. */
export type Why =
  | { kind: 'asked' }
  /** Least leave-one-out error of `of` methods. */
  | { kind: 'least-error'; of: number }
  /** No reading can be predicted from the others, so nothing could be compared. */
  | { kind: 'not-compared' };

export interface Choice {
  method: Method;
  why: Why;
  /** A method that was asked for and does not exist: the automatic choice stands in. */
  notYet?: MethodChoice;
}

/** Each method's root mean square of prediction less reading in ln B, leaving out one place at a time. */
export interface Compared {
  method: Method;
  looRmseLn: number | null;
}

/** The method asked for, or that of the least leave-one-out error; kriging where they are alike. */
export function choose(asked: MethodChoice, compared: readonly Compared[]): Choice {
  if (asked === 'kriging' || asked === 'inverse-distance') return { method: asked, why: { kind: 'asked' } };
  const best = leastError(compared);
  return asked === 'auto' ? best : { ...best, notYet: asked };
}

function leastError(compared: readonly Compared[]): Choice {
  const least = Math.min(...compared.map(({ looRmseLn }) => looRmseLn ?? Infinity));
  if (!Number.isFinite(least)) return { method: 'kriging', why: { kind: 'not-compared' } };
  const best = compared.filter(({ looRmseLn }) => looRmseLn !== null && looRmseLn <= least + ALIKE);
  const { method } = best.find(({ method }) => method === 'kriging') ?? best[0];
  return { method, why: { kind: 'least-error', of: compared.length } };
}
