import { describe, expect, it } from 'vitest';
import { BUILDS } from '../../../support/generators/builds';
import { REMAINDERS } from '../../../../src/engine/mapping/sourceSampling/remainder';
import { sampledField } from '../../../../src/engine/mapping/sourceSampling/sampledField';
import { sampledWithout } from '../../../../src/engine/mapping/sourceSampling/sampledWithout';
import { sampleSources } from '../../../../src/engine/mapping/sourceSampling/sampleSources';
import { samplingQuestion } from '../../../../src/engine/mapping/sourceSampling/question';
import { surveyOf } from '../../../support/generators/generatedHome';
import type { SamplingQuestion } from '../../../../src/engine/mapping/sourceSampling/question';
import type { SourceSamples } from '../../../../src/engine/mapping/sourceSampling/samples';

const home = BUILDS['along walls'](4, 14);
const question = samplingQuestion(surveyOf(home, 'source-sampling', true), {
  seed: 5,
  effort: { chains: 16, burn: 200, keep: 100, samples: 96 },
});

/** The prediction of place i by these samples, or by samples of its own, from a question without some places. */
function refitted(asked: SamplingQuestion, left: readonly number[], i: number, samples?: SourceSamples) {
  const without = { ...asked, places: asked.places.filter((_, j) => !left.includes(j)) };
  const { x, y, z, variance } = asked.places[i];
  const at = sampledField(without, samples ?? sampleSources(without)!, z).both({ xs: [x], ys: [y] });
  return { predicted: at.mean[0], variance: at.variance[0] + variance };
}

/** The same state fifty times. */
const nothing = (remainder: number): SourceSamples => ({
  samples: Array.from({ length: 50 }, () => ({ weight: 1 / 50, remainder, floor: 0, sources: [] })),
  chains: [0],
});

describe('each place predicted without it', () => {
  it('is exact where the samples do not depend on it', () => {
    REMAINDERS.forEach((_, remainder) => {
      const samples = nothing(remainder);
      sampledWithout(question, samples).forEach((prediction, i) => {
        const { predicted, variance } = refitted(question, [i], i, samples);
        expect(prediction!.predicted).toBeCloseTo(predicted, 6);
        expect(prediction!.variance).toBeCloseTo(variance, 6);
      });
    });
  });

  it('leaves out together what was read at one point of the plan', () => {
    const lower = { ...question.places[3], z: 0.5, ln: question.places[3].ln + 0.2 };
    const asked = { ...question, places: [...question.places, lower] };
    const samples = nothing(7);
    const without = sampledWithout(asked, samples);
    for (const i of [3, 14]) {
      const { predicted, variance } = refitted(asked, [3, 14], i, samples);
      expect(without[i]!.predicted).toBeCloseTo(predicted, 6);
      expect(without[i]!.variance).toBeCloseTo(variance, 6);
    }
  });

  it('has no prediction for the only place of a level', () => {
    const upstairs = { ...question.places[0], level: 'l2', z: 4 };
    const asked = { ...question, places: [...question.places, upstairs] };
    expect(sampledWithout(asked, nothing(7)).map((one) => one === null)).toEqual([
      ...question.places.map(() => false),
      true,
    ]);
  });

  it('comes near to sampling anew without it', () => {
    const without = sampledWithout(question, sampleSources(question)!);
    const errors = { near: 0, far: 0 };
    const score = { near: 0, far: 0 };
    question.places.forEach(({ ln }, i) => {
      const [near, far] = [without[i]!, refitted(question, [i], i)];
      for (const [name, { predicted, variance }] of [
        ['near', near],
        ['far', far],
      ] as const) {
        errors[name] += (ln - predicted) ** 2 / 14;
        score[name] -= (0.5 * (Math.log(variance) + (ln - predicted) ** 2 / variance)) / 14;
      }
    });
    expect(Math.sqrt(errors.near / errors.far)).toBeGreaterThan(0.7);
    expect(Math.sqrt(errors.near / errors.far)).toBeLessThan(1.4);
    expect(Math.abs(score.near - score.far)).toBeLessThan(0.35);
  });
});
