import { describe, expect, it } from 'vitest';
import { fieldOf } from '../../../src/engine/mapping/field';
import { sampleSurvey } from '../../../src/engine/mapping/sourceSampling/sampleSurvey';
import { fitSurvey } from '../../../src/engine/mapping/fitSurvey';
import { reading, UNMARKED } from '../../support/readings';
import { REASONS, supportOf } from '../../../src/engine/mapping/support';

/** Standard deviation of ln B at which high/low is the given factor. */
const varianceOf = (factor: number) => (Math.log(factor) / (2 * 1.6448536269514722)) ** 2;

describe('support', () => {
  it('ends where high is ten times low', () => {
    const { doubt, reason } = supportOf(
      Float64Array.of(varianceOf(9.99), varianceOf(10), varianceOf(10.01)),
      Float64Array.of(0, 0, 0),
      3,
      9,
    );
    expect(doubt[0]).toBeLessThan(1);
    expect(doubt[1]).toBeCloseTo(1, 12);
    expect([...reason].map((code) => REASONS[code]).filter((_, i) => i !== 1)).toEqual([null, 'wide']);
  });

  it('ends at the reach of the nearest reading, which may differ from point to point', () => {
    const sure = Float64Array.of(0.01, 0.01);
    expect([...supportOf(sure, Float64Array.of(2.9, 3.1), 3, 9).reason]).toEqual([0, 2]);
    expect([...supportOf(sure, Float64Array.of(2.9, 9.9), [3, 10], 9).reason]).toEqual([0, 0]);
  });

  it('is not given on a level of two places', () => {
    const { doubt, reason } = supportOf(Float64Array.of(0.01), Float64Array.of(0.1), 3, 2);
    expect(doubt[0]).toBeGreaterThan(1);
    expect(REASONS[reason[0]]).toBe('few');
  });

  it('is the same with a variance that was asked for before', () => {
    const readings = Array.from({ length: 12 }, (_, i) => reading(i, [(i % 4) * 2, i / 3], 0.05 + i / 100));
    const result = fitSurvey({ ...UNMARKED, readings, method: 'kriging' });
    if (!result.ok) throw new Error('no fit');
    const field = fieldOf(result.fitted, 'l1', 1);
    const [xs, ys] = [
      [0.5, 3, 9],
      [0.5, 2, 9],
    ];
    const { variance } = field.predict(xs, ys, { variance: true });
    expect(field.support(xs, ys, 3, variance)).toEqual(field.support(xs, ys, 3));
  });

  it('doubt changes little over a centimetre, so that its contour is a line', () => {
    const readings = Array.from({ length: 12 }, (_, i) =>
      reading(i, [(i % 4) * 2, i / 3], 0.05 + (i % 5) / 10),
    );
    const result = fitSurvey({ ...UNMARKED, readings, method: 'kriging' });
    if (!result.ok) throw new Error('no fit');
    const xs = Array.from({ length: 1200 }, (_, i) => -3 + i / 100);
    const { doubt } = fieldOf(result.fitted, 'l1', 1).support(
      xs,
      xs.map(() => 0),
    );
    for (let i = 1; i < doubt.length; i++) expect(Math.abs(doubt[i] - doubt[i - 1])).toBeLessThan(0.05);
  });

  it('reaches 7 m where sources were sampled, and as far as outdoors where that is farther', () => {
    const readings = Array.from({ length: 9 }, (_, i) => reading(i, [i % 3, Math.floor(i / 3)], 0.05));
    const survey = { ...UNMARKED, readings, method: 'source-sampling' as const };
    const result = fitSurvey(survey, undefined, sampleSurvey(survey));
    if (!result.ok) throw new Error('no fit');
    const field = fieldOf(result.fitted, 'l1', 1);
    const [xs, ys] = [
      [5, 8.9, 9.1],
      [1, 1, 1],
    ];
    expect([...field.support(xs, ys, 3).reason]).toEqual([0, 0, 2]);
    expect([...field.support(xs, ys, 10).reason]).toEqual([0, 0, 0]);
    const kriged = fieldOf({ ...result.fitted, sampled: null }, 'l1', 1);
    expect([...kriged.support(xs, ys, 3).reason]).not.toContain(0);
  });
});
