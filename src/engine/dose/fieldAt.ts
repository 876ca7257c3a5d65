import { fieldOf, type Field } from '../mapping/field';
import type { FittedSurvey } from '../mapping/fitSurvey';

/** The estimate on a level at a height above its floor, metres. */
export type FieldAt = (level: string, height: number) => Field;

/** Fields of one survey, each made once: making one factors a matrix of all readings. */
export function fieldsOf(fitted: FittedSurvey): FieldAt {
  const made = new Map<string, Field>();
  return (level, height) => {
    const key = `${level} ${height}`;
    const known = made.get(key);
    if (known) return known;
    const field = fieldOf(fitted, level, height);
    made.set(key, field);
    return field;
  };
}
