import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { fieldOf } from '../../../src/engine/mapping/field';
import { fitSurvey } from '../../../src/engine/mapping/fitSurvey';
import { addReading } from '../../../src/home/edits/add';
import { parseHome } from '../../../src/home/file/parse';
import { assessQuestion } from '../../../src/home/questions/assessQuestion';
import type { Home } from '../../../src/home/home';

/** The sample room with one reading more, past an end of its meter's range. */
function sampleWith(limit: 'below' | 'above', value: number, at: [number, number]) {
  const parsed = parseHome(readFileSync('samples/single-bedroom.home.json', 'utf8'));
  if (!parsed.ok) throw new Error('the sample is not sound');
  const home: Home = structuredClone(parsed.home);
  const first = Object.values(home.readings)[0]!;
  const { id: _, ...like } = first;
  const problem = addReading({ ...like, at, value, limit, min: null, max: null, axes: null }).apply(home);
  if (problem) throw new Error(problem.kind);
  return { home, round: first.round ?? Object.keys(home.rounds)[0]!, height: like.height, level: like.level };
}

describe('a reading past an end of the range', () => {
  for (const method of ['kriging', 'inverse-distance', 'auto'] as const)
    for (const [limit, value] of [
      ['above', 200],
      ['above', 2],
      ['below', 0.01],
    ] as const)
      it(`is not drawn on the other side of its limit: ${limit} ${value}, ${method}`, () => {
        for (const at of [
          [1.5, 1.5],
          [2.1, 2.6],
        ] as [number, number][]) {
          const { home, round, height, level } = sampleWith(limit, value, at);
          const { survey } = assessQuestion(home, { round, method });
          const fit = fitSurvey(survey);
          if (!fit.ok) throw new Error(fit.problem.kind);
          const field = fieldOf(fit.fitted, level, height);
          const [mean] = field.predict([at[0]], [at[1]], { variance: false }).mean;
          const isRight =
            limit === 'above' ? Math.exp(mean!) >= value / 2.01 : Math.exp(mean!) <= value * 2.01;
          const { reason } = field.support([at[0]], [at[1]]);
          expect(isRight || reason[0] === 1).toBe(true);
        }
      });
});
