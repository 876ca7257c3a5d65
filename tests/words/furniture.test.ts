import { expect, it } from 'vitest';
import type { Answer } from '../../src/engine/arranging/arrange';
import { changeLead, provenSentence } from '../../src/words/furniture';
import { bedroom } from '../support/homes';

it('a proof speaks of what was made least, and a search cut short of what may be missed', () => {
  expect(provenSentence({ proven: true, gap: 0 }, 'mean')).toContain('for the home as a whole');
  expect(provenSentence({ proven: true, gap: 0 }, 'worst-off')).toContain('whoever is worst off');
  expect(provenSentence({ proven: false, gap: 0.12 }, 'mean')).toBe(
    'The search was cut short: a lower dose, lower by 12\u2009% at most, may be found among places not tried.',
  );
  expect(provenSentence({ proven: false, gap: 1 }, 'mean')).toBe(
    'The search was cut short: a lower dose may be found among places not tried.',
  );
});

it('fault: the first page advised to move and did not say who has more by it', () => {
  const dose = (value: number) => ({ mean: value / 8, dose: value, low: value, high: value });
  const worth = { moves: true, before: dose(1.9), after: dose(0.64), odds: 0.96, decision: 'move' };
  const answer = {
    decision: 'move',
    pieces: [{ id: 'p1', room: 'r1', ...worth }],
    people: [
      { who: 'A', ...worth },
      { who: 'B', ...worth, before: dose(0.63), after: dose(0.75), odds: 0.08 },
    ],
  } as unknown as Answer;
  const parts = changeLead({ home: bedroom(), answer, about: 'p1', proposal: null, aim: 'mean' })!;
  expect(parts.map(({ text }) => text).join('')).toMatch(
    /; better there: 96.%\. More for B: 0\.63 to 0\.75 µT·h a day \(higher: 92.%\)\.$/,
  );
});
