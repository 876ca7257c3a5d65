import { describe, expect, it } from 'vitest';
import { GUIDELINES } from '../../src/engine/judging/guidelines';
import {
  classText,
  defaultModelSentence,
  guidelineSentence,
  methodName,
  methodSentence,
  supportSentence,
  whyText,
} from '../../src/words/assessment';

it('says why the method was taken, and which one is still to come', () => {
  expect(whyText({ why: { kind: 'least-error', of: 2 } })).toBe(
    'smallest cross-validated error of 2 methods',
  );
  expect(whyText({ why: { kind: 'asked' }, notYet: 'source-sampling' })).toContain(
    'source sampling was asked for',
  );
  for (const method of [
    'inverse-distance',
    'kriging',
    'source-kriging',
    'source-sampling',
    'auto',
  ] as const) {
    expect(methodSentence(method).toLowerCase()).toContain(method === 'auto' ? 'method' : methodName(method));
  }
});

it('owns up to a default model', () => {
  expect(defaultModelSentence({ defaultModel: 'few' })).toContain('Fewer than eight');
  expect(defaultModelSentence({ defaultModel: 'flat' })).toContain('hardly differ');
  expect(defaultModelSentence({ defaultModel: null })).toBeNull();
});

it('says why nothing is shown, and how far the nearest reading is', () => {
  expect(supportSentence('far', 3.14, 'm')).toContain('3.1 m');
  expect(supportSentence('far', null, 'm')).not.toContain('null');
  expect(supportSentence('wide', 1, 'm')).toContain('factor of ten');
  expect(supportSentence('few', 1, 'm')).toContain('Too few');
  expect(supportSentence('outside', 1, 'm')).toContain('Outside');
});

it('names what comparing with each guideline assumes, and which values are from memory', () => {
  for (const set of GUIDELINES) {
    expect(guidelineSentence(set)).toContain(set.source);
    expect(guidelineSentence(set).includes('from memory')).toBe(set.standing === 'memory');
  }
});

it('a word inside whose interval an edge lies is said with what else it may be', () => {
  const text = (classLow: string | null, word: string | null, classHigh: string | null) =>
    classText({ class: word, classLow, classHigh });
  expect(text(null, null, null)).toBe('—');
  expect(text('raised', 'raised', 'raised')).toBe('raised');
  expect(text('raised', 'raised', 'high for long stays')).toBe('raised, or high for long stays');
  expect(text('low', 'raised', 'high for long stays')).toBe('low, raised, or high for long stays');
  expect(text(null, null, 'above aim')).toBe('no word, or above aim');
});

describe('a set of values says what it is', () => {
  const sentence = (id: string, supplyOff = false) =>
    guidelineSentence(
      GUIDELINES.find((set) => set.id === id)!,
      supplyOff,
    );

  it('with its year, or that none is stated', () => {
    for (const id of ['netherlands-policy', 'switzerland-nisv', 'ieee-c95'])
      expect(sentence(id)).toContain('year not stated');
    expect(sentence('sbm-2015')).toContain('an edition of 2024');
    expect(sentence('sbm-2015')).toContain('16.7 Hz judged apart');
    expect(sentence('common-practice')).not.toContain('year not stated');
  });

  it('studies are neither limits nor precautionary values', () => {
    for (const id of ['pooled-2000-greenland', 'pooled-2000-ahlbom'])
      expect(sentence(id)).toMatch(/threshold in studies.*neither a limit nor/);
  });

  it('a reading does not compare with the value of one installation at its nominal load', () => {
    expect(sentence('switzerland-nisv')).toContain('does not compare');
    expect(sentence('switzerland-nisv')).not.toContain('compares with directly');
  });

  it('Italian values are a limit for an instant and two medians of a day', () => {
    for (const part of [
      '100 µT at any instant',
      'medians of 24 h',
      'four hours a day',
      'new buildings',
      'highest',
    ])
      expect(sentence('italy-2003')).toContain(part);
  });

  it('nothing is taken to be typical where the supply was off', () => {
    for (const set of GUIDELINES) expect(guidelineSentence(set, true)).not.toContain('typical');
  });
});
