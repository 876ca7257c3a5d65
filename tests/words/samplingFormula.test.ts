import { expect, it } from 'vitest';
import { assessQuestion } from '../../src/home/questions/assessQuestion';
import { assessSampled } from '../../src/engine/assessSampled';
import { bedroom } from '../support/homes';
import { formulaSentences } from '../../src/words/basis';

it('fault: the report of a sampled map printed the recipe of kriging', () => {
  const home = bedroom();
  const assessed = assessSampled(assessQuestion(home, { method: 'source-sampling' }));
  if (!assessed.ok) throw new Error('the bedroom cannot be assessed');
  const text = formulaSentences(home, assessed.assessment, [0.1]).join('\n');
  const { effort, seed } = assessed.assessment.fitted.sampled!.question;
  expect(text).toContain(`${effort.chains} Markov chains of ${effort.burn} sweeps`);
  expect(text).toContain(`random seed ${seed}.`);
  expect(text).toContain('further off than 7 m indoors');
  expect(text).not.toMatch(/ordinary kriging|[Nn]ugget|0\.6 Δh/);
});
