import { describe, expect, it } from 'vitest';
import type { PersonWorth } from '../../src/engine/arranging/compare';
import { leastText, personText, wishesSentence, worstOffSentence } from '../../src/words/wishes';
import { addPiece } from '../../src/home/edits/add';
import { bedroom, homeWith } from '../support/homes';

const dose = (value: number) => ({ mean: value / 8, dose: value, low: value / 2, high: value * 2 });
const person = (who: string, before: number, after: number, odds = 0.96): PersonWorth => ({
  who,
  moves: before !== after,
  before: dose(before),
  after: dose(after),
  odds: before === after ? null : odds,
  decision: 'move',
});

describe('wishes', () => {
  it('are told where there are any', () => {
    expect(wishesSentence({ cautious: false, aim: 'mean' })).toBe('');
    expect(wishesSentence({ cautious: true, aim: 'mean' })).toBe(
      'Planned on the upper end of the interval (cautious).',
    );
    expect(wishesSentence({ cautious: false, aim: 'worst-off' })).toBe(
      'Planned for the worst off: whoever has most is to have least.',
    );
    expect(wishesSentence({ cautious: true, aim: 'worst-off' })).toBe(
      'Planned for the worst off: whoever has most is to have least; on the upper end of the interval (cautious).',
    );
  });

  it('the least so far says whose it is', () => {
    const one = bedroom();
    const bed = (who: string) => addPiece({ kind: 'bed', uses: [{ who }] });
    const two = homeWith(bed('A'), bed('B'));
    expect(leastText(one, 0.712, { aim: 'mean' })).toBe('The least so far: 0.71 µT·h a day.');
    expect(leastText(two, 0.712, { aim: 'mean' })).toBe('The least so far: 0.71 µT·h a day, mean over all.');
    expect(leastText(two, 0.712, { aim: 'worst-off' })).toBe(
      'The least so far: 0.71 µT·h a day for the worst off.',
    );
  });
});

describe('a person', () => {
  it('has less, more, or as much as now, with the odds of it', () => {
    expect(personText(person('A', 2, 1))).toBe('lower: 96\u2009%');
    expect(personText(person('A', 1, 2, 0.02))).toBe('higher: 98\u2009%');
    expect(personText(person('A', 1, 1))).toBe('as now');
    expect(personText({ moves: false, before: null, after: null, odds: null })).toBe('uses nothing');
  });

  it('who has most is named before and after', () => {
    const people = [person('A', 1.9, 0.4), person('B', 0.8, 0.91)];
    expect(worstOffSentence(bedroom(), { people })).toBe(
      'The most that anyone has: 1.9 (A) to 0.91 µT·h (B).',
    );
    expect(worstOffSentence(bedroom(), { people: [] })).toBe('');
  });
});
