import type { FieldUnit, LengthUnit } from '../home/home';
import type { QuantityProblem } from '../home/problem';
import { fromUnit } from './numbers';

export type ParsedField =
  | { ok: true; µT: number; unit: FieldUnit; limit: 'below' | 'above' | null }
  | { ok: false; problem: QuantityProblem };
export type ParsedLength = { ok: true; metres: number } | { ok: false; problem: QuantityProblem };

const NUMBER = String.raw`(?:\d+(?:[.,]\d*)?|[.,]\d+)(?:e[+-]?\d+)?`;
const FIELD = new RegExp(String.raw`^([<>])?\s*([+-])?\s*(${NUMBER})\s*(\p{L}*)$`, 'iu');
const PLAIN_LENGTH = new RegExp(String.raw`^([+-])?\s*(${NUMBER})\s*(\p{L}*|['"])$`, 'iu');
const FEET = String.raw`(${NUMBER})\s*(?:ft|feet|foot|')`;
const INCHES = String.raw`(?:(${NUMBER}))?(?:(?:^|\s+|(?<=['a-z])\s*)(\d+)\/([1-9]\d*))?\s*(?:in|inch|inches|")?`;
const FEET_AND_INCHES = new RegExp(String.raw`^([+-])?\s*(?:${FEET}\s*)?${INCHES}$`, 'i');

const FIELD_NAMES: Record<string, FieldUnit> = {
  ut: 'uT',
  µt: 'uT',
  μt: 'uT',
  microtesla: 'uT',
  mg: 'mG',
  milligauss: 'mG',
  nt: 'nT',
  nanotesla: 'nT',
};
const METRES_PER: Record<string, number> = {
  m: 1,
  metre: 1,
  metres: 1,
  meter: 1,
  meters: 1,
  cm: 0.01,
  mm: 0.001,
  ft: 0.3048,
  feet: 0.3048,
  foot: 0.3048,
  "'": 0.3048,
  in: 0.0254,
  inch: 0.0254,
  inches: 0.0254,
  '"': 0.0254,
};

/** Spaces of every width, the true minus and the typographic primes become what a keyboard has. */
function plain(text: string): string {
  return text
    .replace(/\s+/gu, ' ')
    .replace(/[−–]/g, '-')
    .replace(/''|[″”“]/g, '"')
    .replace(/[′’‘]/g, "'")
    .trim();
}

const numberOf = (digits: string): number => Number(digits.replace(',', '.'));

/** "1,250" is 1.25 to one person and 1250 to another; a factor of a thousand is not guessed. */
function ambiguous(text: string, digits: string): QuantityProblem | null {
  if (!/^[1-9]\d{0,2},\d{3}$/.test(digits)) return null;
  return { kind: 'comma-ambiguous', text, point: digits.replace(',', '.'), whole: digits.replace(',', '') };
}

/**
 * A field as typed: `0,3`, `0.3`, `.3`, `3 mG`, `120 nT`, `< 0.02` (under the meter's range).
 *
 * @param unit the unit meant where none is written; null where one must be written
 */
export function parseField(typed: string, unit: FieldUnit | null): ParsedField {
  const text = plain(typed);
  if (text === '') return { ok: false, problem: { kind: 'quantity-empty', of: 'field' } };
  const match = FIELD.exec(text);
  if (!match) return { ok: false, problem: { kind: 'not-a-field', text } };
  const [, limit, sign, digits, name] = match;
  const written = name === '' ? unit : (FIELD_NAMES[name!.toLowerCase()] ?? null);
  if (written === null) {
    return {
      ok: false,
      problem:
        name === ''
          ? { kind: 'unit-missing', text }
          : { kind: 'unknown-unit', of: 'field', text, unit: name! },
    };
  }
  const unclear = ambiguous(text, digits!);
  if (unclear) return { ok: false, problem: unclear };
  const value = fromUnit(numberOf(digits!), written);
  if (!Number.isFinite(value)) return { ok: false, problem: { kind: 'not-a-field', text } };
  if (sign === '-' && value > 0)
    return { ok: false, problem: { kind: 'quantity-negative', of: 'field', text } };
  return {
    ok: true,
    µT: value,
    unit: written,
    limit: limit === '<' ? 'below' : limit === '>' ? 'above' : null,
  };
}

/** The size of a length in metres without its sign, or why it is none. */
function sizeOf(text: string, unit: LengthUnit): { sign: string; metres: number } | QuantityProblem {
  const single = PLAIN_LENGTH.exec(text);
  if (single) {
    const [, sign, digits, name] = single;
    const metresPer = METRES_PER[name === '' ? unit : name!.toLowerCase()];
    if (metresPer === undefined) return { kind: 'unknown-unit', of: 'length', text, unit: name! };
    return ambiguous(text, digits!) ?? { sign: sign ?? '', metres: numberOf(digits!) * metresPer };
  }
  const compound = FEET_AND_INCHES.exec(text);
  if (!compound || (compound[2] === undefined && !/(in|inch|inches|")$/i.test(text))) {
    return { kind: 'not-a-length', text };
  }
  const [, sign, feet = '0', inches = '0', part = '0', parts = '1'] = compound;
  const metres = numberOf(feet) * 0.3048 + (numberOf(inches) + Number(part) / Number(parts)) * 0.0254;
  return { sign: sign ?? '', metres };
}

/**
 * A length as typed: `4.2`, `4,2`, `420 cm`, `13 ft 9 in`, `13' 9"`, `13' 9 1/2"`, `165 in`.
 *
 * @param unit the unit meant where none is written
 * @param allowed which signs make sense: a width is `positive`, a height may be zero, a coordinate may be anything
 */
export function parseLength(
  typed: string,
  unit: LengthUnit,
  allowed: 'positive' | 'notNegative' | 'any' = 'positive',
): ParsedLength {
  const text = plain(typed);
  if (text === '') return { ok: false, problem: { kind: 'quantity-empty', of: 'length' } };
  const size = sizeOf(text, unit);
  if ('kind' in size) return { ok: false, problem: size };
  if (!Number.isFinite(size.metres)) return { ok: false, problem: { kind: 'not-a-length', text } };
  if (size.metres === 0 && allowed === 'positive')
    return { ok: false, problem: { kind: 'length-zero', text } };
  const negative = size.sign === '-' && size.metres > 0;
  if (negative && allowed !== 'any') {
    return { ok: false, problem: { kind: 'quantity-negative', of: 'length', text } };
  }
  return { ok: true, metres: negative ? -size.metres : size.metres };
}

/** What is wrong with what was typed, and how to write it. */
export function quantitySentence(problem: QuantityProblem): string {
  switch (problem.kind) {
    case 'quantity-empty':
      return problem.of === 'field'
        ? 'Nothing was typed. Write the reading like 0.14 or 0,14.'
        : 'Nothing was typed. Write the length like 4.2, 4,2, 420 cm or 13 ft 9 in.';
    case 'not-a-field':
      return `Not a field: “${problem.text}”. Write it like 0.14, 0,14, 1.4 mG or 140 nT.`;
    case 'not-a-length':
      return `Not a length: “${problem.text}”. Write it like 4.2, 4,2, 420 cm or 13 ft 9 in.`;
    case 'unknown-unit':
      return problem.of === 'field'
        ? `“${problem.unit}” is not a unit used here. Write µT, mG or nT after the number.`
        : `“${problem.unit}” is not a length used here. Write m, cm, mm, ft or in after the number.`;
    case 'unit-missing':
      return `“${problem.text}” has no unit. Write µT, mG or nT after the number.`;
    case 'comma-ambiguous':
      return `“${problem.text}” can be read two ways. Write ${problem.point} or ${problem.whole}.`;
    case 'quantity-negative':
      return problem.of === 'field'
        ? `“${problem.text}” is below zero, and a field never is. Write it without the minus.`
        : `“${problem.text}” is below zero. Write it without the minus.`;
    case 'length-zero':
      return `“${problem.text}” has no size. Write a length above zero.`;
  }
}
