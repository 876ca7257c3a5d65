import { describe, expect, it } from 'vitest';
import { addReading, addRoom } from '../../src/home/edits/add';
import { newHome } from '../../src/home/newHome';
import {
  changeText,
  coverageSentence,
  evidenceSentences,
  leansSentence,
  lookSentence,
  looksSentence,
  pullNote,
  pullSentence,
  rowText,
} from '../../src/words/evidence';
import { whySentence } from '../../src/words/map';
import type { Evidence, EvidenceRow } from '../../src/engine/mapping/fitSurvey';

const row = (id: number, read = 0.1): EvidenceRow => ({
  ids: [`m${id}`],
  level: 'l1',
  at: [1, 1],
  read,
  predicted: 0.1,
  low: 0.05,
  high: 0.2,
});

/** So many rows, of which some lie inside. */
const evidence = (inside: number, all: number, looRmseLn: number | null = 0.21): Evidence => ({
  readings: all,
  looRmseLn,
  coverage90: inside / all,
  compared: [],
  sources: [],
  origins: null,
  unmarked: null,
  rows: looRmseLn === null ? [] : Array.from({ length: all }, (_, i) => row(i + 1, i < inside ? 0.1 : 0.9)),
});

function home() {
  const made = structuredClone(newHome());
  const level = Object.keys(made.levels)[0]!;
  addRoom({
    level,
    name: 'Kitchen',
    use: 'living',
    outline: [
      [0, 0],
      [3, 0],
      [3, 3],
      [0, 3],
    ],
  }).apply(made);
  addReading({ level, at: [1, 1], value: 0.42, text: '0.42' }).apply(made);
  return { made, room: Object.keys(made.rooms)[0]!, level };
}

describe('how many readings lie inside their interval', () => {
  it('is said with how many would be expected', () => {
    expect(evidenceSentences(evidence(47, 52))).toEqual([
      '52 readings. Each was predicted without itself: the typical miss was a factor of 1.23.',
      '47 of 52 lie inside their 90\u2009% interval (about 47 expected). Anything from 43 to 50 is no surprise: the intervals here are about as wide as they should be.',
    ]);
  });

  // Of 52 at 0.9: P(X ≤ 42) = 0.032, P(X ≤ 43) = 0.071; P(X ≥ 51) = 0.028, P(X ≥ 50) = 0.097.
  it.each([
    [42, 52, 'too narrow'],
    [43, 52, 'no surprise'],
    [50, 52, 'no surprise'],
    [51, 52, 'wider than they need be'],
    [36, 36, 'wider than they need be'],
    [9, 9, 'cannot show'],
    [6, 9, 'cannot show'],
    [5, 9, 'too narrow'],
  ])('%i of %i: %s', (inside, all, part) => {
    expect(coverageSentence(inside, all)).toContain(part);
  });

  it('says so where nothing could be predicted', () => {
    expect(evidenceSentences(evidence(0, 3, null))).toEqual([
      '3 readings, too far apart or too few for any to be predicted from the others.',
    ]);
  });
});

describe('a reading among the evidence', () => {
  it('is told with what was read, predicted, and where it lies', () => {
    expect(rowText(row(12, 0.42), 'Kitchen', 'uT', null)).toBe(
      'Reading 12 (Kitchen): 0.42 µT read, 0.10 µT predicted (0.050–0.20), outside.',
    );
    expect(rowText({ ...row(12), ids: ['m12', 'm13'] }, '', 'mG', null)).toBe(
      'Readings 12, 13: 1.0 mG read, 1.0 mG predicted (0.50–2.0), inside.',
    );
  });

  it('has its pull told in the room where it counts most', () => {
    const { made, room, level } = home();
    const pull = { by: null, change: Math.log(1.08), room, roomChange: Math.log(0.77) };
    expect(pullSentence(pull, made)).toBe(
      'Without it the map would change by 8\u2009% on average, most in: Kitchen (23\u2009% lower).',
    );
    expect(pullSentence({ ...pull, roomChange: 0.001 }, made)).toMatch(/ on average\.$/);
    expect(pullNote({ ...row(1), level }, pull, made)).toBe('Kitchen · 23\u2009% lower there');
    expect(pullNote({ ...row(1), level, at: [9, 9] }, pull, made)).toBe('Kitchen 23\u2009% lower');
    expect(pullSentence({ ...pull, change: 0.001 }, made)).toBe('Without it the map would hardly change.');
    expect(pullSentence({ ...pull, change: 0.9, room: 'r99' }, made)).toBe(
      'Without it the map would change by a factor of 2.5 on average.',
    );
    expect(pullSentence({ ...pull, by: 'source-kriging' }, made)).toContain(
      'Without it the map of source kriging would change by 8\u2009% on average',
    );
    expect([Math.log(1.3), Math.log(2.4), Math.log(0.3)].map(changeText)).toEqual([
      '30\u2009% higher',
      '2.4 times as high',
      '70\u2009% lower',
    ]);
    expect(leansSentence([row(1), row(2)], [null, pull], made)).toContain('Reading 2. Without it');
    expect(leansSentence([row(1)], [{ ...pull, change: 0.01 }], made)).toBe(
      'The map leans on no single reading: whichever is left out, the map changes by 1\u2009% or less on average.',
    );
    expect(leansSentence([row(1)], [null], made)).toBe('');
  });

  it('that the others do not explain is asked about, and no fault is named', () => {
    expect(lookSentence(row(1, 0.42), 'uT', null)).toMatch(
      /^The other readings expect 0\.050–0\.20 µT here\. A source nearby, .*Read it again, or mark the source\.$/,
    );
    expect(lookSentence(row(1, 0.01), 'uT', null)).toContain('had not settled');
    expect(lookSentence(row(1, 1.1), 'uT', 'mG')).toContain('Was that mG?');
    const { made, level } = home();
    expect(looksSentence([{ ...row(1, 0.42), level }], made)).toMatch(/reading 1 \(Kitchen\)\.$/);
    expect(looksSentence([], made)).toBe('');
  });
});

it('says in plain words why a method draws the map', () => {
  expect(whySentence({ method: 'kriging', why: { kind: 'least-error', of: 3 } })).toMatch(
    /kriging came closest/,
  );
  expect(whySentence({ method: 'inverse-distance', why: { kind: 'asked' } })).toBe(
    'You chose inverse distance.',
  );
  expect(whySentence({ method: 'kriging', why: { kind: 'unclear', other: 'source-kriging' } })).toMatch(
    /better by source kriging, but .* a mark .* luck, so kriging draws/,
  );
  expect(whySentence({ method: 'source-sampling', why: { kind: 'samples-hold' } })).toMatch(/about as well/);
  expect(whySentence({ method: 'kriging', why: { kind: 'not-compared' } })).toContain('Too few');
});
