import { expect, test } from 'vitest';
import { decide } from '../../../src/engine/arranging/decide';

test.each([
  [1, 0.5, 0.95, 'move'],
  [1, 0.9, 0.9, 'move'],
  [1, 0.91, 0.99, 'stay'],
  [1, 0.5, 0.89, 'measure-both'],
  [1, 0.5, 0.7, 'measure-both'],
  [1, 0.5, 0.69, 'stay'],
  [1, 1.2, 0.2, 'stay'],
  [1, 0.5, null, 'stay'],
] as const)('from %f to %f µT·h at odds %s: %s', (before, after, odds, word) => {
  expect(decide(before, after, odds)).toBe(word);
});
