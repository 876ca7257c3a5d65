import { beforeAll, describe, expect, it } from 'vitest';
import { BUILDS } from '../../../support/generators/builds';
import { conductorField } from '../../../../src/engine/magnetics/conductor';
import { krige, kriged, krigedCovariance } from '../../../../src/engine/mapping/kriging';
import { random } from '../../../../src/engine/algebra/random';
import { REMAINDERS } from '../../../../src/engine/mapping/sourceSampling/remainder';
import { resultant } from '../../../../src/engine/magnetics/phasor';
import { sampledField } from '../../../../src/engine/mapping/sourceSampling/sampledField';
import { sampleSources } from '../../../../src/engine/mapping/sourceSampling/sampleSources';
import { samplingQuestion } from '../../../../src/engine/mapping/sourceSampling/question';
import { surveyOf, wallsOf } from '../../../support/generators/generatedHome';
import type { Ring } from '../../../../src/engine/geometry/point';
import type { SampledPlace, SamplingQuestion } from '../../../../src/engine/mapping/sourceSampling/question';
import type { SourceSamples } from '../../../../src/engine/mapping/sourceSampling/samples';

const SHORT = { chains: 4, burn: 300, keep: 200, samples: 40 };
const ROOM: Ring = [
  [0, 0],
  [5, 0],
  [5, 4],
  [0, 4],
];

/** Twenty places in a room, each with what `field` says. */
function placesIn(field: (x: number, y: number) => number): SampledPlace[] {
  const chance = random(77);
  return Array.from({ length: 20 }, () => {
    const [x, y] = [chance.between(0.3, 4.7), chance.between(0.3, 3.7)];
    return { level: 'l1', x, y, z: 1, ln: Math.log(field(x, y)), variance: 0.03 ** 2 };
  });
}

const inRoom = (field: (x: number, y: number) => number): SamplingQuestion => ({
  places: placesIn(field),
  walls: wallsOf([ROOM]),
  marked: [],
  seed: 5,
  effort: SHORT,
});

const home = BUILDS['along walls'](3, 24);
const question = samplingQuestion(surveyOf(home, 'source-sampling', true), {
  seed: 5,
  effort: SHORT,
});
const targets = { xs: [0.5, 2, 3.3, 4.1, 6], ys: [0.5, 3, 1.7, 2.2, 5] };

describe('source sampling', () => {
  let samples: SourceSamples;
  beforeAll(() => {
    samples = sampleSources(question)!;
  });

  it('gives the same samples for the same seed, to the bit, and others for another', () => {
    expect(sampleSources(question)).toEqual(samples);
    expect(sampleSources({ ...question, seed: 6 })).not.toEqual(samples);
  });

  it('gives as many samples as were asked for, whose shares make one', () => {
    expect(samples.samples).toHaveLength(SHORT.samples);
    expect(samples.samples.reduce((sum, { weight }) => sum + weight, 0)).toBeCloseTo(1, 12);
  });

  it('says how far it is and stops when told', () => {
    const shares: number[] = [];
    sampleSources(question, (share) => shares.push(share));
    expect(shares).toEqual([...shares].sort((a, b) => a - b));
    expect(shares.at(-1)).toBe(1);
    let asked = 0;
    expect(sampleSources(question, undefined, () => ++asked > 2)).toBeNull();
    expect(asked).toBe(3);
  });

  /** The question with the reading at one place a so much larger. */
  const changed = (factor: number): SamplingQuestion => ({
    ...question,
    places: question.places.map((place, i) =>
      i === 4 ? { ...place, ln: place.ln + Math.log(factor) } : place,
    ),
    start: samples,
  });
  const states = ({ samples }: SourceSamples) => samples.map(({ sources, floor }) => ({ sources, floor }));

  it('that were sampled before keep their states where a reading hardly changed, weighed by what it says', () => {
    const same = sampleSources({ ...question, start: samples })!;
    expect(states(same)).toEqual(states(samples));
    same.samples.forEach(({ weight }) => expect(weight).toBeCloseTo(1 / SHORT.samples, 12));
    const near = sampleSources(changed(1.02))!;
    expect(states(near)).toEqual(states(samples));
    expect(near.samples.reduce((sum, { weight }) => sum + weight, 0)).toBeCloseTo(1, 12);
    expect(new Set(near.samples.map(({ weight }) => weight)).size).toBeGreaterThan(10);
  });

  it('moves the map the way one reading moved, and hardly far from it', () => {
    const { x, y } = question.places[4];
    const at = { xs: [x], ys: [y] };
    const move = (factor: number) =>
      sampledField(changed(factor), sampleSources(changed(factor))!, 1).mean(at)[0] -
      sampledField(question, samples, 1).mean(at)[0];
    expect(move(1.03)).toBeGreaterThan(0);
    expect(move(1 / 1.03)).toBeLessThan(0);
  });

  it('is sampled anew where a reading changed beyond what the earlier samples hold, or other sources may be there', () => {
    const far = changed(30);
    expect(sampleSources(far)).toEqual(sampleSources({ ...far, start: undefined }));
    const unmarked = { ...question, marked: [], start: samples };
    expect(sampleSources(unmarked)).toEqual(sampleSources({ ...unmarked, start: undefined }));
  });

  it('has a covariance whose diagonal is the variance', () => {
    const field = sampledField(question, samples, 1);
    const { mean, variance } = field.both(targets);
    const cross = field.cross(targets, targets);
    const m = targets.xs.length;
    variance.forEach((value, p) => {
      expect(cross[p * m + p]).toBeCloseTo(value, 10);
      for (let q = 0; q < m; q++) expect(cross[p * m + q]).toBeCloseTo(cross[q * m + p], 12);
    });
    expect([...field.mean(targets)]).toEqual([...mean]);
  });
});

describe('source sampling without a source', () => {
  it('is kriging with the covariance of its remainder', () => {
    // The mean of the remainder is uncertain by s as well, round the ambient floor: to ordinary kriging that is one more
    // value, of the ambient floor, too far off to be like any other.
    REMAINDERS.forEach(({ s, rho }, remainder) => {
      const none = {
        samples: [{ weight: 1, logLikelihood: 0, remainder, floor: 0, sources: [] }],
        slots: [],
      };
      const field = sampledField(question, none, 1);
      const { places } = question;
      const kriging = krige(
        {
          xs: [...places.map(({ x }) => x), 1e5],
          ys: [...places.map(({ y }) => y), 0],
          values: [...places.map(({ ln }) => ln), Math.log(0.02)],
          noise: [...places.map(({ variance }) => variance), 0],
        },
        { model: 'exponential', nugget: 0, sill: s * s, range: rho },
      );
      const expected = kriged(kriging, targets);
      const { mean, variance } = field.both(targets);
      mean.forEach((value, p) => expect(value).toBeCloseTo(expected.mean[p], 8));
      variance.forEach((value, p) => expect(value).toBeCloseTo(expected.variance[p], 8));
      const cross = krigedCovariance(kriging, targets, targets);
      field.cross(targets, targets).forEach((value, at) => expect(value).toBeCloseTo(cross[at], 8));
    });
  });
});

describe('a field that is known', () => {
  it('that is the same everywhere is drawn the same everywhere', () => {
    const even = inRoom(() => 0.06);
    const { mean } = sampledField(even, sampleSources(even)!, 1).both({ xs: [1, 2.5, 4], ys: [1, 2, 3.5] });
    mean.forEach((value) => expect(Math.abs(value - Math.log(0.06))).toBeLessThan(0.05));
  });

  it('of one wire along a wall is put down to that wall, and known where nothing was read', () => {
    const wire = { from: [0, 4, 0] as const, to: [5, 4, 0] as const, amperes: 2, degrees: 0, endless: false };
    const field = (x: number, y: number) => Math.hypot(0.01, resultant(conductorField([wire], [x, y, 1])));
    const asked = inRoom(field);
    const samples = sampleSources(asked)!;
    const share = samples.samples
      .filter(({ sources }) => sources.some(({ slot }) => slot === 'wall 5.00 4.00 0.00 4.00 0.00'))
      .reduce((sum, { weight }) => sum + weight, 0);
    expect(share).toBeGreaterThan(0.9);
    const { mean, variance } = sampledField(asked, samples, 1).both({ xs: [2.5, 0.2], ys: [4.6, 0.1] });
    [field(2.5, 4.6), field(0.2, 0.1)].forEach((truth, p) => {
      expect(Math.abs(mean[p] - Math.log(truth))).toBeLessThan(0.1);
      expect(variance[p]).toBeLessThan(0.15 ** 2);
    });
  });
});
