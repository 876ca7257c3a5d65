import { fieldOf, type Field } from '../mapping/field';
import { sameValue } from '../sameValue';
import type { FittedSurvey } from '../mapping/fitSurvey';

/** The estimate on a level at a height above its floor, metres. */
export type FieldAt = (level: string, height: number) => Field;

let last: { fitted: FittedSurvey; fieldAt: FieldAt } | null = null;

/**
 * Fields of one survey, each made once: making one factors a matrix of all readings. Those of the last survey are kept for
 * whoever asks next, since questions about one map follow each other and come to a worker as copies.
 */
export function fieldsOf(fitted: FittedSurvey): FieldAt {
  if (last && sameValue(last.fitted, fitted)) return last.fieldAt;
  const made = new Map<string, Field>();
  const fieldAt = (level: string, height: number) => {
    const key = `${level} ${height}`;
    const known = made.get(key);
    if (known) return known;
    const field = fieldOf(fitted, level, height);
    made.set(key, field);
    return field;
  };
  last = { fitted, fieldAt };
  return fieldAt;
}
