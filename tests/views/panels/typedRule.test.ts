import { describe, expect, it } from 'vitest';
import { typedRule } from '../../../src/views/panels/arrange/typedRule';

describe('the length of a rule as it is typed', () => {
  it.each([
    ['0,3', 0.3],
    ['.45', 0.45],
    ['30 cm', 0.3],
    ['1 ft 2 in', 14 * 0.0254],
    ['14"', 14 * 0.0254],
    ['3', 3],
  ])('%s is %d m', (text, metres) => {
    const typed = typedRule('m', 0.3)(text);
    expect(typed.ok && typed.value).toBeCloseTo(metres, 9);
  });

  it('a bare number is in the unit of the home', () => {
    const typed = typedRule('ft', 0.3)('2');
    expect(typed.ok && typed.value).toBeCloseTo(0.6096, 9);
  });

  it.each([
    ['0,2', 'm', '“0,2” leaves no way out. Write 0.30 m or more.'],
    ['6 in', 'ft', '“6 in” leaves no way out. Write 1 ft or more.'],
    ['3.5', 'm', '“3.5” is more than a room has. Write 3.00 m or less.'],
    ['wide', 'm', 'Not a length: “wide”. Write it like 4.2, 4,2, 420 cm or 13 ft 9 in.'],
    ['-1', 'm', '“-1” is below zero. Write it without the minus.'],
  ] as const)('%s (%s) is refused with a sentence', (text, unit, sentence) => {
    expect(typedRule(unit, 0.3)(text)).toEqual({ ok: false, sentence });
  });

  it('nothing may be asked for where a rule has no least', () => {
    expect(typedRule('m', 0)('0')).toEqual({ ok: true, value: 0 });
  });
});
