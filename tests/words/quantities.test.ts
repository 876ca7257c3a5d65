import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fieldText, lengthText } from '../../src/words/numbers';
import { parseField, parseLength, quantitySentence } from '../../src/words/quantities';

describe('parseField', () => {
  it.each([
    ['0,3', 'uT', 0.3],
    ['0.3', 'uT', 0.3],
    ['.3', 'uT', 0.3],
    [',3', 'uT', 0.3],
    ['3.', 'uT', 3],
    ['1e-1', 'uT', 0.1],
    ['3 mG', 'uT', 0.3],
    ['3mg', 'uT', 0.3],
    ['120 nT', 'uT', 0.12],
    ['0.14 µT', 'mG', 0.14],
    ['0.14 μT', 'mG', 0.14],
    ['0.14 uT', 'mG', 0.14],
    ['3', 'mG', 0.3],
    ['120', 'nT', 0.12],
    ['  0.14\u2009µT ', 'nT', 0.14],
    ['0', 'uT', 0],
    ['0,125', 'uT', 0.125],
  ] as const)('reads %s as µT when %s is meant', (text, unit, microtesla) => {
    const parsed = parseField(text, unit);
    expect(parsed).toMatchObject({ ok: true, limit: null });
    expect(parsed.ok && parsed.µT).toBeCloseTo(microtesla, 12);
  });

  it('keeps the unit that was written, and what lies outside the range of the meter', () => {
    expect(parseField('3 mG', 'uT')).toMatchObject({ ok: true, unit: 'mG' });
    expect(parseField('< 0.02', 'uT')).toMatchObject({ ok: true, µT: 0.02, limit: 'below' });
    expect(parseField('>20', 'uT')).toMatchObject({ ok: true, µT: 20, limit: 'above' });
  });

  it.each([
    ['', 'quantity-empty'],
    ['   ', 'quantity-empty'],
    ['abc', 'not-a-field'],
    ['0.1.4', 'not-a-field'],
    ['1,234.5', 'not-a-field'],
    ['1e999', 'not-a-field'],
    ['0.1 0.2', 'not-a-field'],
    ['-0.3', 'quantity-negative'],
    ['−0.3', 'quantity-negative'],
    ['3 mT', 'unknown-unit'],
    ['3 m', 'unknown-unit'],
    ['1,250', 'comma-ambiguous'],
  ])('says what is wrong with “%s”', (text, kind) => {
    const parsed = parseField(text, 'uT');
    expect(parsed.ok ? null : parsed.problem.kind).toBe(kind);
    if (!parsed.ok) expect(quantitySentence(parsed.problem)).toMatch(/Write|Nothing/);
  });

  it('asks for a unit where one must be written', () => {
    expect(parseField('3', null)).toEqual({ ok: false, problem: { kind: 'unit-missing', text: '3' } });
    expect(parseField('3 mG', null)).toMatchObject({ ok: true });
  });
});

describe('parseLength', () => {
  it.each([
    ['4.2', 'm', 4.2],
    ['4,2', 'm', 4.2],
    ['4.2 m', 'ft', 4.2],
    ['420 cm', 'm', 4.2],
    ['4200mm', 'm', 4.2],
    ['13 ft 9 in', 'm', 4.191],
    ['13ft 9in', 'm', 4.191],
    ['13\'9"', 'm', 4.191],
    ["13' 9", 'm', 4.191],
    ['13′ 9″', 'm', 4.191],
    ["13'9''", 'm', 4.191],
    ['165 in', 'm', 4.191],
    ['165"', 'm', 4.191],
    ["13'", 'm', 3.9624],
    ['13', 'ft', 3.9624],
    ['13,5 ft', 'm', 4.1148],
    ['13 ft 9 1/2 in', 'm', 4.2037],
    ['1/2 in', 'm', 0.0127],
    ['9 1/2"', 'm', 0.2413],
  ] as const)('reads %s when %s is meant', (text, unit, metres) => {
    const parsed = parseLength(text, unit);
    expect(parsed.ok && parsed.metres).toBeCloseTo(metres, 9);
  });

  it.each([
    ['4.2.1', 'not-a-length'],
    ['13 9', 'not-a-length'],
    ['four', 'not-a-length'],
    ['4 x 3', 'not-a-length'],
    ['', 'quantity-empty'],
    ['0', 'length-zero'],
    ['-2', 'quantity-negative'],
    ['4 yd', 'unknown-unit'],
    ['1,250', 'comma-ambiguous'],
  ])('says what is wrong with “%s”', (text, kind) => {
    const parsed = parseLength(text, 'm');
    expect(parsed.ok ? null : parsed.problem.kind).toBe(kind);
  });

  it('writes the sentence a person can act on', () => {
    const parsed = parseLength('4.2.1', 'm');
    expect(parsed.ok ? '' : quantitySentence(parsed.problem)).toBe(
      'Not a length: “4.2.1”. Write it like 4.2, 4,2, 420 cm or 13 ft 9 in.',
    );
  });

  it('lets a coordinate be below zero and a height be zero', () => {
    expect(parseLength('−1,5', 'm', 'any')).toEqual({ ok: true, metres: -1.5 });
    expect(parseLength('0', 'm', 'notNegative')).toEqual({ ok: true, metres: 0 });
    expect(parseLength('-1', 'm', 'notNegative').ok).toBe(false);
  });
});

describe('what is written can be typed again', () => {
  it('lengths, to half an inch or a centimetre', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.02, max: 900, noNaN: true }),
        fc.constantFrom('m' as const, 'ft' as const),
        (metres, unit) => {
          const parsed = parseLength(lengthText(metres, unit), unit);
          expect(parsed.ok && Math.abs(parsed.metres - metres)).toBeLessThanOrEqual(
            unit === 'm' ? 0.0051 : 0.0128,
          );
        },
      ),
    );
  });

  it('fields, to two figures', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.001, max: 900, noNaN: true }),
        fc.constantFrom('uT' as const, 'mG' as const, 'nT' as const),
        (value, unit) => {
          const parsed = parseField(fieldText(value, unit), unit);
          expect(parsed.ok && Math.abs(parsed.µT - value) / value).toBeLessThanOrEqual(0.0501);
        },
      ),
    );
  });

  it('never throws on anything typed', () => {
    fc.assert(
      fc.property(fc.string(), (text) => {
        parseField(text, 'uT');
        parseLength(text, 'm');
      }),
    );
  });
});
