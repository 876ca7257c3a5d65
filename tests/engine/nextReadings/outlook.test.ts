import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fieldOf } from '../../../src/engine/mapping/field';
import { heightVariance } from '../../../src/engine/mapping/plane';
import { observe } from '../../../src/engine/mapping/observations';
import { outlookOf } from '../../../src/engine/nextReadings/outlook';
import { reading } from '../../support/readings';
import { kriged, METER, readAt, scattered, varianceOf } from './surveyed';
import type { SurveyReading } from '../../../src/engine/mapping/survey';

const HOME = [0, 0, 9, 7] as [number, number, number, number];

const SUMS = [
  { xs: [4.4], ys: [3.1], weights: [1] },
  { xs: [1.15, 1.35, 1.55], ys: [2.05, 2.05, 2.25], weights: [0.5, 0.3, 0.2] },
  { xs: [1.15, 7.95], ys: [2.05, 6.05], weights: [1, -1] },
  { xs: [12], ys: [9], weights: [1] },
];

/** fast-check prints the seed and the smallest counter-example of a property that fails. */
const RUNS = { numRuns: 40 };

const survey = fc.record({
  seed: fc.integer({ min: 1, max: 1e6 }),
  readings: fc.integer({ min: 3, max: 24 }),
  spots: fc.integer({ min: 1, max: 5 }),
  height: fc.constantFrom(1, 0.6),
});

describe('what readings to come would leave unsure', () => {
  it('is what a refit leaves of kriging with its variogram kept, whatever they show', () => {
    fc.assert(
      fc.property(survey, ({ seed, readings, spots, height }) => {
        const before = readAt(scattered(readings, HOME, seed), seed);
        const places = scattered(spots, HOME, seed + 1);
        const coming = places.map((at, i) => reading(100 + i, at, 0.05 + i, { meter: METER }));
        const fitted = kriged(before);
        const outlook = outlookOf(
          fieldOf(fitted, 'l1', height),
          { xs: places.map(([x]) => x), ys: places.map(([, y]) => y) },
          noise(coming, height),
          SUMS,
        );
        SUMS.forEach((sum, k) =>
          expect(outlook.variances[k]).toBeCloseTo(varianceOf(fitted, height, sum), 9),
        );
        coming.forEach((_, c) => {
          const lowered = SUMS.map((_, k) => outlook.variances[k] - outlook.lowers(c, k));
          outlook.read(c);
          const refitted = kriged([...before, ...coming.slice(0, c + 1)]);
          SUMS.forEach((sum, k) => {
            expect(outlook.variances[k]).toBeCloseTo(varianceOf(refitted, height, sum), 9);
            expect(lowered[k]).toBeCloseTo(outlook.variances[k], 12);
          });
        });
      }),
      RUNS,
    );
  });

  it('does not depend on the order they are read in', () => {
    const fitted = kriged(readAt(scattered(12, HOME, 3), 3));
    const places = scattered(4, HOME, 4);
    const left = (order: number[]) => {
      const outlook = outlookOf(
        fieldOf(fitted, 'l1', 1),
        { xs: places.map(([x]) => x), ys: places.map(([, y]) => y) },
        places.map(() => 0.03 ** 2),
        SUMS,
      );
      order.forEach((c) => outlook.read(c));
      return [...outlook.variances];
    };
    const others = left([3, 1, 0, 2]);
    left([0, 1, 2, 3]).forEach((variance, k) => expect(variance).toBeCloseTo(others[k], 12));
  });

  it('takes a reading to be beside what it tells of, so that unevenness between them stays', () => {
    const fitted = kriged(readAt(scattered(12, HOME, 5), 5));
    const outlook = outlookOf(fieldOf(fitted, 'l1', 1), { xs: [4.4], ys: [3.1] }, [1e-6], SUMS);
    outlook.read(0);
    expect(outlook.variances[0]).toBeGreaterThan(fitted.variogram.nugget);
  });
});

const noise = (coming: readonly SurveyReading[], height: number) =>
  observe(coming).map((place) => place.variance + heightVariance(place.height, height));
