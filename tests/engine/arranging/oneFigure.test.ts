import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { arrange } from '../../../src/engine/arranging/arrange';
import { arrangeQuestion } from '../../../src/home/questions/arrangeQuestion';
import { assessPiece } from '../../../src/home/questions/assessPiece';
import { fieldsOf } from '../../../src/engine/dose/fieldAt';
import { firstOf, inOrder } from '../../../src/home/order';
import { fitSurvey } from '../../../src/engine/mapping/fitSurvey';
import { observe } from '../../../src/engine/mapping/observations';
import { parseHome } from '../../../src/home/file/parse';
import { pieceDose } from '../../../src/engine/dose/pieceDose';
import { sampleSources } from '../../../src/engine/mapping/sourceSampling/sampleSources';
import { samplingQuestion } from '../../../src/engine/mapping/sourceSampling/question';
import { surveyOf } from '../../../src/home/questions/surveyOf';
import type { Home } from '../../../src/home/home';
import type { MethodChoice } from '../../../src/engine/mapping/survey';

const METHODS: MethodChoice[] = ['kriging', 'inverse-distance', 'source-kriging', 'source-sampling'];

/** Samples too few for a map, and enough to be unlike each other. */
const QUICK = { chains: 4, burn: 40, keep: 20, samples: 12 };

function homeOf(name: string): Home {
  const file = parseHome(
    readFileSync(new URL(`../../../samples/${name}.home.json`, import.meta.url), 'utf8'),
  );
  if (!file.ok) throw new Error(name);
  return file.home;
}

function fittedOf(home: Home, method: MethodChoice) {
  const survey = surveyOf(home, firstOf(home.rounds)!.id, method);
  const question = samplingQuestion(survey, { seed: 1, effort: QUICK });
  const sampled = () => ({
    question,
    samples: sampleSources(question)!,
    elevations: survey.elevations,
    // A map too sure of itself, so that the odds are of a wider one.
    without: observe(survey.readings).map(({ ln }) => ({ predicted: ln + 0.15, variance: 0.01 })),
  });
  const fit = fitSurvey(survey, undefined, method === 'source-sampling' ? sampled() : null);
  if (!fit.ok) throw new Error(fit.problem.kind);
  expect(fit.fitted.method).toBe(method);
  return fit.fitted;
}

/** Equal to the ninth digit. */
const same = (a: number, b: number) => expect(Math.abs(a / b - 1)).toBeLessThan(1e-9);

describe.each(['single-bedroom', 'one-bedroom-flat', 'terraced-house'])('%s', (name) => {
  const home = homeOf(name);
  test.each(METHODS)('by %s a piece where it stands has one dose and one interval', (method) => {
    const fitted = fittedOf(home, method);
    const fieldAt = fieldsOf(fitted);
    const { people, pieces, ...whole } = arrange(
      arrangeQuestion(home, fitted, { cautious: false, aim: 'mean' }),
    );
    const doses = inOrder(home.pieces).flatMap((piece) => pieceDose(fieldAt, assessPiece(piece)) ?? []);
    let compared = 0;
    for (const { id, dose } of doses) {
      const put = pieces.find((piece) => piece.id === id);
      if (!put) continue;
      compared++;
      for (const figure of ['mean', 'dose', 'low', 'high'] as const) same(put.before![figure], dose[figure]);
    }
    expect(compared).toBeGreaterThan(0);
    // A person who uses one piece has its dose.
    const uses = doses.flatMap((piece) => piece.uses);
    for (const { who, before } of people) {
      const own = uses.filter((use) => use.who === who);
      if (own.length === 1) same(before!.dose, own[0].dose.dose);
    }
    const moved = doses.map((one) => pieces.find(({ id }) => id === one.id)).filter((one) => one?.moves);
    for (const put of moved) {
      const { level, at, angle } = put!;
      const there = assessPiece({ ...home.pieces[put!.id], level, at, angle });
      const dose = pieceDose(fieldAt, there)!.dose;
      for (const figure of ['dose', 'low', 'high'] as const) same(put!.after![figure], dose[figure]);
    }
    expect(whole.before).toBeGreaterThan(0);
  });
});
