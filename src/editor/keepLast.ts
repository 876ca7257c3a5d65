import { sameValue } from '../engine/sameValue';

/** A pure function that keeps its last answer and gives it again where every argument is the same object. */
export function keepLast<Arguments extends unknown[], Answer>(
  work: (...given: Arguments) => Answer,
): (...given: Arguments) => Answer {
  let last: { given: Arguments; answer: Answer } | null = null;
  return (...given) => {
    if (!last || given.some((value, i) => value !== last!.given[i])) last = { given, answer: work(...given) };
    return last.answer;
  };
}

/** Hands on values, but the same object again as long as what is in it has not changed. */
export function keepSame<Value>(): (value: Value) => Value {
  let last: Value;
  return (value) => {
    if (!sameValue(last, value)) last = value;
    return last;
  };
}
