import { describe, expect, it } from 'vitest';
import type { PersonWorth } from '../../src/engine/arranging/compare';
import { moreSentence } from '../../src/words/whoHasMore';
import { bedroom } from '../support/homes';

const dose = (value: number) => ({ mean: value / 8, dose: value, low: value / 2, high: value * 2 });
const person = (who: string, before: number, after: number, odds: number | null): PersonWorth => ({
  who,
  moves: before !== after,
  before: dose(before),
  after: dose(after),
  odds,
  decision: 'stay',
});
const said = (...people: PersonWorth[]) => moreSentence(bedroom(), { people });
const gains = person('person 1', 1.9, 0.64, 0.99);

describe('fault: advice to move did not say who has more by it', () => {
  it('names each whose dose is likely to rise, with both doses', () => {
    expect(said(gains, person('person 3', 0.63, 0.75, 0.08))).toBe(
      'More for person 3: 0.63 to 0.75 µT·h a day (higher: 92\u2009%).',
    );
    expect(said(gains, person('B', 1, 2, 0.2), person('C', 3, 4, 0.1))).toMatch(
      /^More for B: 1\.0 to 2\.0 .*; for C: 3\.0 to 4\.0 .*\.$/,
    );
  });

  it('says nothing where no rise is likely, where nobody rises, and of one alone', () => {
    expect(said(gains, person('B', 0.63, 0.65, 0.4))).toBe('');
    expect(said(gains, person('B', 0.63, 0.6, 0.2))).toBe('');
    expect(said(gains, person('B', 0.63, 0.63, null))).toBe('');
    expect(said(person('B', 0.63, 0.75, 0.08))).toBe('');
  });
});
