import { expect, it } from 'vitest';
import { provenSentence } from '../../src/words/furniture';

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
