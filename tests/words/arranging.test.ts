import { describe, expect, it } from 'vitest';
import {
  changeText,
  decisionSentence,
  decisionText,
  pieceSentence,
  ruleSentence,
} from '../../src/words/arranging';
import type { PlacedPiece } from '../../src/engine/arranging/arrange';
import type { RuleKind } from '../../src/engine/arranging/rules';

const dose = (value: number) => ({ mean: value / 8, dose: value, low: value * 0.86, high: value * 1.19 });
const placed = (before: number, after: number, moves: boolean): PlacedPiece => ({
  id: 'p1',
  room: 'r1',
  level: 'l1',
  at: [0, 0],
  angle: 0,
  before: dose(before),
  after: dose(after),
  odds: 0.96,
  decision: 'move',
  moves,
  breaks: [],
});

describe('decisions', () => {
  it('carry their odds, and stay where no gain is clear', () => {
    expect(decisionText('move', 0.96)).toBe('better here: 96\u2009%');
    expect(decisionText('measure-both', 0.8)).toBe('better here: 80\u2009%. Measure both places first');
    expect(decisionText('stay', 0.6)).toBe('no clear gain: stay');
    expect(decisionText('stay', null)).toBe('no clear gain: stay');
    expect(new Set((['move', 'measure-both', 'stay'] as const).map(decisionSentence)).size).toBe(3);
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
    expect(pieceSentence(placed(1.94, 0.641, true), 'the double bed', 'bed', 'uT')).toBe(
      'A night in the double bed falls from 1.9 to 0.64 µT·h (0.55–0.76).',
    );
    expect(pieceSentence(placed(0.3, 0.4, true), 'the desk', 'desk', 'uT')).toContain(
      'A day at the desk rises from',
    );
    expect(pieceSentence(placed(0.3, 0.3, false), 'the cot', 'cot', 'mG')).toBe(
      'A night in the cot stays at 3.0 mG·h.',
    );
    expect(pieceSentence({ ...placed(1, 1, true), before: null }, 'The shelf', 'other', 'uT')).toBe(
      'The shelf moves.',
    );
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
