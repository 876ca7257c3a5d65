import { describe, expect, test } from 'vitest';
import { atMains, classOf, GUIDELINES, judgesBy } from '../../../src/engine/judging/guidelines';

const set = (id: string) => GUIDELINES.find((one) => one.id === id)!;

describe('classes of SBM-2015 (published as < 20, 20–100, 100–500, > 500 nT)', () => {
  test.each([
    [0, 'no anomaly'],
    [0.0199, 'no anomaly'],
    [0.02, 'slight anomaly'],
    [0.0999, 'slight anomaly'],
    [0.1, 'severe anomaly'], // in two published classes: severe is the project's choice
    [0.5, 'severe anomaly'],
    [0.5001, 'extreme anomaly'],
  ])('%f µT is %s', (value, word) => {
    expect(classOf(set('sbm-2015'), 'sleeping', value)).toBe(word);
  });

  test('it does not speak of rooms where nobody sleeps', () => {
    expect(classOf(set('sbm-2015'), 'living', 0.6)).toBeNull();
  });
});

test('a limit is kept at the value itself', () => {
  expect(classOf(set('icnirp-2010'), 'grounds', 200)).toBe('within the reference level');
  expect(classOf(set('icnirp-2010'), 'grounds', 200.1)).toBe('above the reference level');
});

test('Ahlbom et al. 2000 speak of 0.4 µT and more', () => {
  expect(classOf(set('pooled-2000-ahlbom'), 'sleeping', 0.4)).toBe('at or above the studied threshold');
  expect(classOf(set('pooled-2000-ahlbom'), 'sleeping', 0.399)).toBe('below the studied threshold');
});

test('Italian values step at 3, 10 and 100 µT', () => {
  const words = [3, 3.1, 10.1, 100.1].map((value) => classOf(set('italy-2003'), 'sleeping', value));
  expect(words).toEqual([
    'within the quality goal',
    'above the quality goal for new buildings',
    'above the attention value',
    'above the limit',
  ]);
});

test('what is from memory says so', () => {
  const remembered = GUIDELINES.filter(({ standing }) => standing === 'memory').map(({ id }) => id);
  expect(remembered).toEqual(['europaem-2016']);
});

test('a set of the user speaks by its own edges, and of every use where it names none', () => {
  const own = {
    ...set('common-practice'),
    id: 'own-1',
    standing: 'own' as const,
    uses: [],
    edges: [{ value: 0.1, word: 'above aim' }],
  };
  expect(classOf(own, 'wet', 0.1)).toBe('above aim');
  expect(classOf(own, 'wet', 0.0999)).toBeNull();
});

test('every set names its source, and its edges ascend', () => {
  expect(new Set(GUIDELINES.map(({ id }) => id)).size).toBe(GUIDELINES.length);
  for (const { source, edges } of GUIDELINES) {
    expect(source).not.toBe('');
    const values = edges.map(({ value }) => value);
    expect(values).toEqual([...values].sort((a, b) => a - b));
  }
});

test('a value at an edge has one word, however it was come by', () => {
  for (const value of [0.03, Math.exp(Math.log(0.03)), 0.1 * 0.3, 30 / 1000, 0.01 + 0.02, 0.03 - 1e-17])
    expect(classOf(set('common-practice'), 'sleeping', value)).toBe('raised');
  for (const value of [0.1, Math.exp(Math.log(0.1)), 0.1 + 1e-17, 0.3 / 3])
    expect(classOf(set('common-practice'), 'sleeping', value)).toBe('raised');
  expect(classOf(set('sbm-2015'), 'sleeping', 0.3 + 0.2 + 1e-16)).toBe('severe anomaly');
});

test('a value for one installation at its nominal load gives no word to a spot reading', () => {
  for (const value of [0.1, 5]) expect(classOf(set('switzerland-nisv'), 'sleeping', value)).toBeNull();
});

test('the older reference level is 100 µT at 50 Hz and 83.3 µT at 60 Hz', () => {
  const older = set('eu-1999');
  expect(classOf(atMains(older, 50), 'sleeping', 90)).toBe('within the reference level');
  expect(classOf(atMains(older, 60), 'sleeping', 90)).toBe('above the reference level');
  expect(atMains(set('icnirp-2010'), 60).edges).toEqual(set('icnirp-2010').edges);
});

test('limits are judged by the highest of a room, other values by its middle', () => {
  const byHighest = GUIDELINES.filter((one) => judgesBy(one) === 'highest').map(({ id }) => id);
  expect(byHighest).toEqual(['switzerland-nisv', 'italy-2003', 'eu-1999', 'icnirp-2010', 'ieee-c95']);
});

test('pooled studies are called studies, not precautionary values', () => {
  expect(GUIDELINES.filter(({ kind }) => kind === 'study').map(({ id }) => id)).toEqual([
    'pooled-2000-greenland',
    'pooled-2000-ahlbom',
  ]);
});
