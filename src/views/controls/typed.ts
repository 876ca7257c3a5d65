import type { FieldUnit, LengthUnit } from '../../home/home';
import { countSentence, numberSentence } from '../../words/panels';
import { parseField, parseLength, quantitySentence } from '../../words/quantities';
import { survey } from '../../words/survey';

/** What came of an entry: a value, or the sentence that says how to write it. */
export type Typed<T> = { ok: true; value: T } | { ok: false; sentence: string };

/** Reads a length in metres; a bare number is in the home's unit. */
export function typedLength(unit: LengthUnit, allowed: 'positive' | 'notNegative' | 'any' = 'positive') {
  return (text: string): Typed<number> => {
    const parsed = parseLength(text, unit, allowed);
    return parsed.ok
      ? { ok: true, value: parsed.metres }
      : { ok: false, sentence: quantitySentence(parsed.problem) };
  };
}

/** Reads a plain number between two bounds, with a comma or a point. */
export function typedNumber(low: number, high: number) {
  return (text: string): Typed<number> => {
    const plain = text.trim().replace('−', '-').replace(',', '.');
    const value = Number(plain);
    if (plain === '' || !Number.isFinite(value)) return { ok: false, sentence: numberSentence(text) };
    if (value < low || value > high) return { ok: false, sentence: countSentence(text, low, high) };
    return { ok: true, value };
  };
}

/** Reads a field, µT; a bare number is in the unit given. */
export function typedField(unit: FieldUnit) {
  return (text: string): Typed<number> => {
    const parsed = parseField(text, unit);
    return parsed.ok
      ? { ok: true, value: parsed.µT }
      : { ok: false, sentence: quantitySentence(parsed.problem) };
  };
}

/** The same, where nothing typed means that there is none. */
export function typedNone<T>(parse: (text: string) => Typed<T>) {
  return (text: string): Typed<T | null> => (text.trim() === '' ? { ok: true, value: null } : parse(text));
}

/** Reads a day as 2026-03-02; nothing typed means none. */
export function typedDate(text: string): Typed<string | null> {
  const plain = text.trim();
  if (plain === '') return { ok: true, value: null };
  const day = /^\d{4}-\d{2}-\d{2}$/.test(plain) ? new Date(`${plain}T00:00:00Z`) : null;
  return day && !Number.isNaN(day.getTime()) && day.toISOString().startsWith(plain)
    ? { ok: true, value: plain }
    : { ok: false, sentence: survey.notDate(text) };
}
