import { expect, test } from 'vitest';
import { decide, decideForWorstOff } from '../../../src/engine/arranging/decide';

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

const person = (before: number, after: number, odds: number | null) => ({
  before: { dose: before },
  after: { dose: after },
  odds,
});

test.each([
  [
    'whoever has most gains, and nobody then has as much',
    [person(2, 0.5, 0.95), person(1, 1.2, 0.1)],
    'move',
  ],
  ['likely, not surely', [person(2, 0.5, 0.8), person(1, 1, null)], 'measure-both'],
  ['another has as much then', [person(2, 0.5, 0.99), person(1, 1.9, 0.01)], 'stay'],
  ['whoever has most has it still', [person(2, 2, null), person(1, 0.2, 0.99)], 'stay'],
  ['nobody is there', [], 'stay'],
] as const)('for the worst off: %s', (_, people, word) => expect(decideForWorstOff(people)).toBe(word));
