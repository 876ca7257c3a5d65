import { describe, expect, it } from 'vitest';
import { BUILDS } from '../../../support/generators/builds';
import { HALF_90 } from '../../../../src/engine/mapping/interval';
import { sampledWithout } from '../../../../src/engine/mapping/sourceSampling/sampledWithout';
import { FULL_EFFORT, samplingQuestion } from '../../../../src/engine/mapping/sourceSampling/question';
import { surveyOf } from '../../../support/generators/generatedHome';
import type { SamplingQuestion } from '../../../../src/engine/mapping/sourceSampling/question';

const asked = (seed: number, readings: number): SamplingQuestion =>
  samplingQuestion(surveyOf(BUILDS['along walls'](seed, readings), 'source-sampling', true), {
    seed: 5,
    effort: FULL_EFFORT,
  });
const question = asked(4, 8);

/** The same question with another reading at place i. */
const changed = ({ places, ...rest }: SamplingQuestion, i: number): SamplingQuestion => ({
  ...rest,
  places: places.map((place, j) => (j === i ? { ...place, ln: place.ln + 1 } : place)),
});

describe('each place predicted without it', () => {
  const without = sampledWithout(question);

  it('is predicted the same whatever was read there', () => {
    const again = sampledWithout(changed(question, 7));
    expect(again[7]).toEqual(without[7]);
    expect(again).not.toEqual(without);
  });

  it('is predicted without what was read at another height of the same point, too', () => {
    const lower = { ...question.places[3], z: 0.5 };
    const both = { ...question, places: [...question.places, lower] };
    expect(sampledWithout(changed(both, 8))[3]).toEqual(sampledWithout(both)[3]);
  });

  it('has no prediction where it is the only place of its level', () => {
    const upstairs = { ...question.places[0], level: 'l2', z: 4 };
    const both = { ...question, places: [...question.places, upstairs] };
    expect(sampledWithout(both).map((one) => one === null)).toEqual([
      ...question.places.map(() => false),
      true,
    ]);
  });

  it('says how far it is and stops when told', () => {
    const shares: number[] = [];
    sampledWithout(question, (share) => shares.push(share));
    expect(shares).toEqual([...shares].sort((a, b) => a - b));
    expect(shares.at(-1)).toBe(1);
    let count = 0;
    expect(sampledWithout(question, undefined, () => ++count > 8)).toContain(null);
    expect(count).toBeLessThan(20);
  });

  it('lies within its 90 % interval about nine times in ten', () => {
    let inside = 0;
    for (const seed of [1, 2]) {
      const { places } = asked(seed, 24);
      sampledWithout(asked(seed, 24)).forEach((prediction, i) => {
        const { predicted, variance } = prediction!;
        if (Math.abs(places[i].ln - predicted) <= HALF_90 * Math.sqrt(variance)) inside++;
      });
    }
    expect(inside / 48).toBeGreaterThan(0.8);
    expect(inside / 48).toBeLessThan(0.98);
  });
});
