import { describe, expect, it } from 'vitest';
import {
  changeText,
  decisionSentence,
  decisionText,
  ruleSentence,
  spellName,
} from '../../src/words/arranging';
import type { RuleKind } from '../../src/engine/arranging/rules';

describe('decisions', () => {
  it('carry their odds, and stay where no gain is clear', () => {
    expect(decisionText('move', 0.96)).toBe('better here: 96\u2009%');
    expect(decisionText('measure-both', 0.8)).toBe('better here: 80\u2009%. Measure both places first');
    expect(decisionText('stay', 0.6)).toBe('no clear gain: stay');
    expect(decisionText('stay', null)).toBe('no clear gain: stay');
    expect(decisionSentence('move')).toMatch(/^Move: /);
    expect(decisionSentence('measure-both')).toMatch(/^Measure both places first: /);
    expect(decisionSentence('stay')).toMatch(/^No clear gain: stay\. .* the home as a whole /);
    expect(decisionSentence('stay', 'worst-off')).toMatch(/ whoever is worst off /);
  });
});

describe('a change', () => {
  it('is told in the unit shown', () => {
    expect(changeText({ before: 1.94, after: 0.641, low: 0.552, high: 0.758 }, 'uT')).toEqual({
      before: '1.9',
      after: '0.64',
      interval: '0.55–0.76',
      unit: 'µT·h',
    });
  });

  it('is a night in a bed and a day at a desk', () => {
    expect([spellName('bed'), spellName('cot'), spellName('desk')]).toEqual([
      'A night in',
      'A night in',
      'A day at',
    ]);
  });
});

it('has one sentence for every rule, which names what stands in the way', () => {
  const kinds: RuleKind[] = [
    'outside-room',
    'wrong-room',
    'on-fixture',
    'in-door-swing',
    'before-door',
    'head-off-wall',
    'head-across-door',
    'back-off-wall',
    'access',
    'near-radiator',
    'cot-near-heat',
    'cot-near-window',
    'unsupported',
    'overlap',
    'access-taken',
    'cot-near-piece',
    'two-doubles',
    'head-under-window',
    'wardrobe-front',
    'crowded',
  ];
  for (const kind of kinds) expect(ruleSentence({ kind, with: null }, null)).toMatch(/^[A-Z].*\.$/);
  expect(ruleSentence({ kind: 'overlap', with: 'p2' }, 'the desk')).toBe('It would stand on the desk.');
});
