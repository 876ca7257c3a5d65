import { expect, it } from 'vitest';
import { newHome } from '../../src/home/newHome';
import { shownValue } from '../../src/home/questions/shownValue';
import { addMeter, addReading } from '../../src/home/edits/add';
import { rowText } from '../../src/words/evidence';
import { correctedText, correctionText, isCorrected } from '../../src/words/survey';
import { placeText, probeText } from '../../src/words/panels';
import type { Home } from '../../src/home/home';

function corrected(gain: number): Home {
  const home = structuredClone(newHome());
  addMeter({ name: 'House meter', gain, offset: 0 }).apply(home);
  const level = Object.keys(home.levels)[0]!;
  addReading({ level, at: [1, 1], value: 0.49, text: '0.49' }).apply(home);
  return home;
}

it('a reading that the meter’s correction changes says what was read and what it is taken as', () => {
  const home = corrected(0.9);
  const id = Object.keys(home.readings)[0]!;
  expect(shownValue(home, [id])).toBe(0.49);
  expect(correctedText(0.49, 0.441, 'uT')).toBe('0.49 read, 0.44 corrected');
  const row = {
    ids: [id],
    level: 'l1',
    at: [1, 1] as const,
    read: 0.441,
    predicted: 0.4,
    low: 0.3,
    high: 0.6,
  };
  expect(rowText(row, '', 'uT', shownValue(home, [id]))).toContain(': 0.49 read, 0.44 corrected, 0.40 µT');
  expect(isCorrected(Object.values(home.meters)[0]!)).toBe(true);
  expect(correctionText(Object.values(home.meters)[0]!, 'uT')).toBe('true = 0.900 × shown');
});

it('without a correction what was read stands alone', () => {
  const home = corrected(1);
  expect(shownValue(home, [Object.keys(home.readings)[0]!])).toBeNull();
  expect(shownValue(home, ['b7'])).toBeNull();
});

it('a place is across and up the page, whichever way north lies', () => {
  expect(placeText([8.1, -2.1], 'm')).toBe('8.10 m across, −2.10 m up');
});

it('a place outside every room is said so, as in the command line’s table', () => {
  const probe = { at: [9, 9] as const, value: null, low: null, high: null, supported: false, nearest: 4 };
  expect(probeText({ ...probe, reason: 'outside' }, 'uT', 'm')).toContain(
    'Outside every room that is drawn.',
  );
});
