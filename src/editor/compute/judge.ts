import { answersAt, type Answer } from '../../engine/arranging/answer';
import { fieldsOf } from '../../engine/dose/fieldAt';
import type { ArrangeRequest } from '../../engine/arranging/request';
import type { Put } from '../../engine/arranging/place';
import { sameValue } from '../../engine/sameValue';

/** So many places on, what was found of all of them is let go: some hundred kilobytes each, on a sampled map. */
const MANY = 100;

/** Says what places are worth that a hand tries one after the other, and keeps between them what rooms and map have told. */
export function createJudge(): (request: ArrangeRequest, puts: readonly Put[]) => Answer {
  let known: { request: ArrangeRequest; at: (puts: readonly Put[]) => Answer; times: number } | null = null;
  return (request, puts) => {
    if (!known || known.times === MANY || !sameValue(known.request, request))
      known = { request, at: answersAt(request, fieldsOf(request.fitted)), times: 0 };
    known.times += 1;
    return known.at(puts);
  };
}
