import type { LengthUnit } from '../../home/home';
import { countSentence, numberSentence } from '../../words/panels';
import { parseLength, quantitySentence } from '../../words/quantities';

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
