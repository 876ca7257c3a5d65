import { expect, it } from 'vitest';
import { dateText, spanText } from '../../src/words/dates';

it('writes a date out', () => {
  expect(dateText('2026-03-04')).toBe('4 March 2026');
  expect(dateText('2026-12-31T23:59:00+01:00')).toBe('31 December 2026');
  expect(dateText('last spring')).toBe('last spring');
});

it('says when a survey was made, by the clock of the home', () => {
  expect(spanText([])).toBeNull();
  expect(spanText(['2026-03-14T20:05:00+01:00', '2026-03-14T19:10:00+01:00'])).toBe(
    '14 March 2026, 19:10 to 20:05',
  );
  expect(spanText(['2026-03-14T19:10:00+01:00'])).toBe('14 March 2026, 19:10');
  expect(spanText(['2026-03-14', '2026-03-14T19:10:00Z'])).toBe('14 March 2026');
  expect(spanText(['2026-03-14T19:10:00Z', '2026-04-02T09:00:00Z'])).toBe('14 March 2026 to 2 April 2026');
});
