import { expect, test } from 'vitest';
import { againstTarget } from '../../../src/engine/judging/againstTarget';

test('a room is over a target only where its whole interval is', () => {
  expect(againstTarget({ low: 0.11, high: 0.3 }, 0.1)).toBe('over');
  expect(againstTarget({ low: 0.1, high: 0.3 }, 0.1)).toBe('untold');
  expect(againstTarget({ low: 0.05, high: 0.11 }, 0.1)).toBe('untold');
  expect(againstTarget({ low: 0.05, high: 0.1 }, 0.1)).toBe('under');
});
