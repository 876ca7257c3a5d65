import { expect, it } from 'vitest';
import { overSentence, type RoomCounts } from '../../src/words/judge';
import { tally } from '../../src/words/panels';
import { shareText } from '../../src/words/numbers';

const said = (counts: Partial<RoomCounts>) => {
  const { bold, rest } = overSentence({ judged: 6, over: 0, untold: 0, sleeping: 0, ...counts }, 0.1, 'uT');
  return bold + rest;
};

it('rooms that cannot be told are counted apart from those over the target', () => {
  expect(said({ over: 3, untold: 2, sleeping: 1 })).toBe(
    'Three rooms lie over your target of 0.1 µT, one of them for sleeping; two cannot be told.',
  );
  expect(said({ over: 1, sleeping: 1 })).toBe(
    'One room lies over your target of 0.1 µT, and is for sleeping.',
  );
  expect(said({ over: 2, sleeping: 2 })).toBe('Two rooms lie over your target of 0.1 µT, all for sleeping.');
  expect(said({ untold: 2 })).toBe('No room surely lies over your target of 0.1 µT; two cannot be told.');
  expect(said({})).toBe('Every room judged lies under your target of 0.1 µT.');
  expect(said({ judged: 1, untold: 1 })).toContain('cannot be told');
  expect(said({ judged: 0 })).toContain('No room');
});

it('the tally under the stage does so too', () => {
  expect(tally.over(3, 0)).toBe('3 over target');
  expect(tally.over(0, 0)).toBe('none over target');
  expect(tally.over(3, 2)).toBe('3 over, 2 untold');
  expect(tally.over(0, 2)).toBe('none over, 2 untold');
});

it('a share of the floor carries its interval', () => {
  expect(shareText(0.74, 0.46, 0.94)).toBe('74\u2009% (46–94)');
  expect(shareText(1, 0.975, 1)).toBe('100\u2009% (98–100)');
  expect(shareText(0, 0, 0.002)).toBe('0\u2009% (0–<\u20091)');
  expect(shareText(1, 1, 1)).toBe('100\u2009%');
});
