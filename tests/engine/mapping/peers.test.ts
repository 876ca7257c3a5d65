import { describe, expect, it } from 'vitest';
import { empiricalVariogram } from '../../../src/engine/mapping/empiricalVariogram';
import { fitVariogram } from '../../../src/engine/mapping/fitVariogram';
import { inverseDistanceWeights } from '../../../src/engine/mapping/inverseDistance';
import { inverseDistanceWithout } from '../../../src/engine/mapping/inverseDistanceWithout';
import { krigedWithout, leftOver } from '../../../src/engine/mapping/krigedWithout';
import { rootMeanSquare } from '../../../src/engine/mapping/leaveOneOut';
import { krige, krigedCovariance, kriged, krigedMean, withValues } from '../../../src/engine/mapping/kriging';
import { trendCovariance, trendInformation, trendVarianceWithout } from '../../../src/engine/mapping/trend';
import { semivariance } from '../../../src/engine/mapping/variogram';
import { gstat, referenceTable } from '../../support/reference';
import type { Data } from '../../../src/engine/mapping/covarianceMatrix';
import type { Place } from '../../../src/engine/mapping/observations';
import type { Variogram } from '../../../src/engine/mapping/variogram';

const average = (numbers: ArrayLike<number>) =>
  Array.from(numbers).reduce((sum, number) => sum + number, 0) / numbers.length;

const dataOf = (rows: readonly { x: number; y: number; value: number }[], noise = 0): Data => ({
  xs: rows.map(({ x }) => x),
  ys: rows.map(({ y }) => y),
  values: rows.map(({ value }) => value),
  noise: rows.map(() => noise),
});

const placesOf = (rows: readonly { x: number; y: number; value: number }[]): Place[] =>
  rows.map(({ x, y, value }, i) => ({
    level: 'l1',
    x,
    y,
    height: 1,
    ln: value,
    variance: 0,
    limited: false,
    ids: [`m${i + 1}`],
  }));

// Isaaks & Srivastava 1989, An Introduction to Applied Geostatistics, chapters 11 and 12: points by a secondary text,
// attribution from memory, values recomputed with gstat 2.1-0.
describe('seven points of Isaaks & Srivastava 1989', () => {
  const rows = [
    [61, 139, 477],
    [63, 140, 696],
    [64, 129, 227],
    [68, 128, 646],
    [71, 140, 606],
    [73, 141, 791],
    [75, 128, 783],
  ].map(([x, y, value]) => ({ x, y, value }));
  const target = { xs: [65], ys: [137] };
  const exponential: Variogram = { model: 'exponential', nugget: 0, sill: 10, range: 1 / 0.3 };
  const gaussian: Variogram = { model: 'gaussian', nugget: 0, sill: 10, range: 10 / Math.sqrt(3) };

  it.each([
    ['exponential', exponential, 592.728943, 8.956053],
    ['gaussian', gaussian, 559.370023, 4.780597],
  ] as const)('ordinary kriging, %s', (name, variogram, estimate, variance) => {
    const kriging = krige(dataOf(rows), variogram);
    expect(krigedMean(kriging, target)[0]).toBeCloseTo(estimate, 6);
    expect(kriged(kriging, target).variance[0]).toBeCloseTo(variance, 6);
    const [expected, expectedVariance] = gstat(`seven.${name}`);
    expect(krigedMean(kriging, target)[0]).toBeCloseTo(expected, 8);
    expect(kriged(kriging, target).variance[0]).toBeCloseTo(expectedVariance, 8);
  });

  it.each([
    [
      'exponential',
      exponential,
      [0.17293732, 0.31779357, 0.12873406, 0.08639657, 0.1511277, 0.05723465, 0.08577613],
    ],
    [
      'gaussian',
      gaussian,
      [-0.02151367, 0.67604409, 0.16589793, -0.01279332, 0.44408584, -0.28844597, 0.0367251],
    ],
  ] as const)('weights, %s', (_, variogram, weights) => {
    // Kriging is linear: the weight of a point is the estimate where it alone is 1.
    const found = rows.map(
      (_row, i) =>
        krigedMean(
          krige(dataOf(rows.map((row, j) => ({ ...row, value: i === j ? 1 : 0 }))), variogram),
          target,
        )[0],
    );
    found.forEach((weight, i) => expect(weight).toBeCloseTo(weights[i], 8));
    expect(found.reduce((sum, weight) => sum + weight, 0)).toBeCloseTo(1, 12);
  });

  it.each([
    [1, 593.9537],
    [2, 597.6204],
  ])('inverse distance, power %d', (power, expected) => {
    const weights = new Float64Array(rows.length);
    const spots = { x: rows.map(({ x }) => x), y: rows.map(({ y }) => y), drop: rows.map(() => 0) };
    inverseDistanceWeights(spots, 65, 137, power, weights, 0);
    expect(rows.reduce((sum, { value }, i) => sum + weights[i] * value, 0)).toBeCloseTo(expected, 4);
  });

  it.each([
    ['four points at ± 2.5', 'four', [-2.5, 2.5], 588.939323, 2.66623],
    ['100 points, −4.5 … 4.5', 'hundred', Array.from({ length: 10 }, (_, i) => i - 4.5), 580.84819, 1.83762],
  ])('block of %s', (_, name, offsets, estimate, variance) => {
    const kriging = krige(dataOf(rows), exponential);
    const xs = offsets.flatMap((dx) => offsets.map(() => 65 + dx));
    const ys = offsets.flatMap(() => offsets.map((dy) => 137 + dy));
    const block = { xs, ys };
    expect(average(krigedMean(kriging, block))).toBeCloseTo(estimate, 6);
    expect(average(krigedCovariance(kriging, block, block))).toBeCloseTo(variance, 6);
    // By the equations themselves, in R: gstat's own block of a hundred is 5e-7 off them.
    const [expected, expectedVariance] = gstat(`seven.block.${name}.direct`);
    expect(average(krigedMean(kriging, block))).toBeCloseTo(expected, 8);
    expect(average(krigedCovariance(kriging, block, block))).toBeCloseTo(expectedVariance, 8);
  });
});

// meuse: Burrough & McDonnell 1998, data of R's sp 1.6-0; values by gstat 2.1-0 (tests/reference/gstat.R), the fit also in
// gstat's own documentation.
describe('zinc along the Meuse', () => {
  const rows = referenceTable<'x' | 'y' | 'zinc'>('meuse.csv').map(({ x, y, zinc }) => ({
    x,
    y,
    value: Math.log(zinc),
  }));
  const lags = empiricalVariogram(
    rows.map((row) => ({ ...row, level: 'l1', noise: 0 })),
    1596.62261595,
    15,
  );
  const [nugget, sill, range] = gstat('meuse.fit');
  const spherical: Variogram = { model: 'spherical', nugget, sill, range };

  it('has the empirical variogram', () => {
    const expected = referenceTable<'pairs' | 'distance' | 'semivariance'>('meuseVariogram.csv');
    expect(lags).toHaveLength(expected.length);
    lags.forEach((lag, i) => {
      expect(lag.pairs).toBe(expected[i].pairs);
      expect(lag.distance).toBeCloseTo(expected[i].distance, 7);
      expect(lag.semivariance).toBeCloseTo(expected[i].semivariance, 10);
    });
  });

  it('has the spherical fit with weights N/h², and no worse a one', () => {
    const misfit = (variogram: Variogram) =>
      lags.reduce(
        (sum, { pairs, distance, semivariance: found }) =>
          sum + (pairs / distance ** 2) * (found - semivariance(variogram, distance)) ** 2,
        0,
      );
    const fitted = fitVariogram(lags, 'spherical', [10, 5000]);
    expect(misfit(fitted)).toBeLessThanOrEqual(gstat('meuse.fit.misfit')[0] * (1 + 1e-12));
    // gstat's search ends a few parts in 10⁵ short of the bottom of the valley, so the parameters agree so far and no further.
    expect(Math.abs(fitted.nugget / 0.050662427 - 1)).toBeLessThan(1e-4);
    expect(Math.abs(fitted.sill / 0.590607802 - 1)).toBeLessThan(1e-4);
    expect(Math.abs(fitted.range / 897.02091 - 1)).toBeLessThan(1e-4);
  });

  it('is kriged at two points and over the grid of 3,103 cells', () => {
    const kriging = krige(dataOf(rows), spherical);
    const two = { xs: [180000, 181180], ys: [331000, 333740] };
    const [first, second] = krigedMean(kriging, two);
    const [firstVariance, secondVariance] = kriged(kriging, two).variance;
    expect(first).toBeCloseTo(5.055498191, 9);
    expect(firstVariance).toBeCloseTo(0.1611382264, 9);
    expect(second).toBeCloseTo(6.4996241, 7);
    expect(secondVariance).toBeCloseTo(0.31980839, 8);
    [first, firstVariance, second, secondVariance].forEach((value, i) =>
      expect(value).toBeCloseTo(gstat('meuse.points')[i], 9),
    );
    const cells = referenceTable<'x' | 'y'>('meuseGrid.csv');
    const grid = { xs: cells.map(({ x }) => x), ys: cells.map(({ y }) => y) };
    expect(cells).toHaveLength(3103);
    expect(average(krigedMean(kriging, grid))).toBeCloseTo(5.70722872, 8);
    expect(average(kriged(kriging, grid).variance)).toBeCloseTo(0.18533193, 8);
  });

  it('is predicted leaving out one place at a time', () => {
    const places = placesOf(rows);
    const predictions = krigedWithout(places, spherical);
    const expected = referenceTable<'predicted' | 'variance'>('meuseLeaveOneOut.csv');
    const residuals = predictions.map((prediction, i) => {
      expect(prediction!.predicted).toBeCloseTo(expected[i].predicted, 9);
      expect(prediction!.variance).toBeCloseTo(expected[i].variance, 9);
      return places[i].ln - prediction!.predicted;
    });
    expect(rootMeanSquare(places, predictions)).toBeCloseTo(0.3918035, 7);
    expect(average(residuals)).toBeCloseTo(-2.0736e-5, 9);
    expect(average(residuals.map(Math.abs))).toBeCloseTo(0.29215153, 8);
    expect(average(residuals.map((residual, i) => residual ** 2 / predictions[i]!.variance))).toBeCloseTo(
      0.8185456,
      7,
    );
    expect(rootMeanSquare(places, inverseDistanceWithout(places, spherical, 2))).toBeCloseTo(0.51383307, 8);
  });

  it('is kriged with the variance of the measurement apart from the nugget', () => {
    const kriging = krige(dataOf(rows, 0.04), { model: 'exponential', nugget: 0.03, sill: 0.55, range: 400 });
    const two = { xs: [180000, 181180], ys: [331000, 333740] };
    const [mean, variance] = [krigedMean(kriging, two), kriged(kriging, two).variance];
    expect(
      [mean[0], variance[0], mean[1], variance[1]].map((value, i) => value - gstat('meuse.noise')[i]),
    ).toEqual([0, 0, 0, 0].map(() => expect.closeTo(0, 10)));
  });
});

// Universal kriging, of the parts that source kriging has for the strengths of its sources, which are a trend's coefficients.
describe('zinc along the Meuse with a trend, the square root of the distance to the river', () => {
  const table = referenceTable<'x' | 'y' | 'zinc' | 'dist'>('meuse.csv');
  const rows = table.map(({ x, y, zinc }) => ({ x, y, value: Math.log(zinc) }));
  const z = rows.map(({ value }) => value);
  const u = table.map(({ dist }) => Math.sqrt(dist));
  const [nugget, sill, range] = gstat('meuse.trend.fit');
  const exponential: Variogram = { model: 'exponential', nugget, sill, range };
  const kriging = krige(dataOf(rows), exponential);
  const [uu, uz] = trendInformation(kriging, [u, z]);
  const doubt = Float64Array.of(1 / uu);

  it('has the exponential fit to what least squares leaves, and no worse a one', () => {
    const [meanU, meanZ] = [average(u), average(z)];
    const slope =
      u.reduce((sum, value, i) => sum + (value - meanU) * (z[i] - meanZ), 0) /
      u.reduce((sum, value) => sum + (value - meanU) ** 2, 0);
    const lags = empiricalVariogram(
      rows.map((row, i) => ({ ...row, value: z[i] - slope * u[i], level: 'l1', noise: 0 })),
      1596.62261595,
      15,
    );
    const misfit = (variogram: Variogram) =>
      lags.reduce(
        (sum, { pairs, distance, semivariance: found }) =>
          sum + (pairs / distance ** 2) * (found - semivariance(variogram, distance)) ** 2,
        0,
      );
    expect(misfit(exponential)).toBeCloseTo(gstat('meuse.trend.fit.misfit')[0], 12);
    const fitted = fitVariogram(lags, 'exponential', [10, 5000]);
    expect(misfit(fitted)).toBeLessThanOrEqual(misfit(exponential) * (1 + 1e-12));
    expect(Math.abs(fitted.nugget / 0.057122311 - 1)).toBeLessThan(1e-3);
    expect(Math.abs(fitted.sill / 0.176415586 - 1)).toBeLessThan(1e-3);
    expect(Math.abs(fitted.range / 340.32006 - 1)).toBeLessThan(1e-3);
  });

  it('is kriged over the grid', () => {
    const cells = referenceTable<'x' | 'y' | 'dist'>('meuseGrid.csv');
    const grid = { xs: cells.map(({ x }) => x), ys: cells.map(({ y }) => y) };
    const slope = uz / uu;
    const rest = withValues(
      kriging,
      z.map((value, i) => value - slope * u[i]),
    );
    const told = krigedMean(withValues(kriging, u), grid);
    const { mean, variance } = kriged(rest, grid);
    const open = [told.map((value, p) => Math.sqrt(cells[p].dist) - value)];
    const estimates = mean.map((value, p) => value + slope * Math.sqrt(cells[p].dist));
    const variances = variance.map((value, p) => value + trendCovariance(doubt, open, p, open, p));
    const expected = referenceTable<'predicted' | 'variance'>('meuseTrendGrid.csv');
    expect(expected).toHaveLength(63);
    expected.forEach((row, i) => {
      expect(estimates[50 * i]).toBeCloseTo(row.predicted, 9);
      expect(variances[50 * i]).toBeCloseTo(row.variance, 9);
    });
    const [meanEstimate, meanVariance] = gstat('meuse.trend.grid');
    expect(average(estimates)).toBeCloseTo(meanEstimate, 9);
    expect(average(variances)).toBeCloseTo(meanVariance, 9);
  });

  it('is predicted leaving out one place at a time', () => {
    const places = placesOf(rows);
    const ofPlace = new Map(places.map((place, i) => [place, [z[i], u[i]]]));
    const predictions = leftOver(places, exponential, (place) => ofPlace.get(place)!).map((left, i) => {
      const { residuals, variance } = left!;
      const [rest, open] = residuals;
      const slope = (uz - (open * rest) / variance) / (uu - (open * open) / variance);
      return {
        predicted: z[i] - (rest - slope * open),
        variance: variance + trendVarianceWithout(doubt, [open], variance),
      };
    });
    referenceTable<'predicted' | 'variance'>('meuseTrendLeaveOneOut.csv').forEach((row, i) => {
      expect(predictions[i].predicted).toBeCloseTo(row.predicted, 9);
      expect(predictions[i].variance).toBeCloseTo(row.variance, 9);
    });
    expect(rootMeanSquare(places, predictions)).toBeCloseTo(0.37765088, 8);
    expect(
      average(predictions.map(({ predicted, variance }, i) => (z[i] - predicted) ** 2 / variance)),
    ).toBeCloseTo(1.08212257, 8);
  });
});

// Goovaerts 1997 (259 points predict 100 others) and Cressie 1993; data and values by gstat 2.1-0.
describe('other open data', () => {
  it('cadmium of the Jura at its validation points', () => {
    const rows = referenceTable<'x' | 'y' | 'cadmium'>('jura.csv');
    const others = referenceTable<'x' | 'y' | 'cadmium'>('juraValidation.csv');
    const kriging = krige(dataOf(rows.map(({ x, y, cadmium }) => ({ x, y, value: Math.log(cadmium) }))), {
      model: 'spherical',
      nugget: 0.2,
      sill: 0.3,
      range: 1,
    });
    const points = { xs: others.map(({ x }) => x), ys: others.map(({ y }) => y) };
    const { mean, variance } = kriged(kriging, points);
    referenceTable<'predicted' | 'variance'>('juraKriged.csv').forEach((row, i) => {
      expect(mean[i]).toBeCloseTo(row.predicted, 9);
      expect(variance[i]).toBeCloseTo(row.variance, 9);
    });
    const errors = others.map(({ cadmium }, i) => mean[i] - Math.log(cadmium));
    expect(Math.sqrt(average(errors.map((error) => error ** 2)))).toBeCloseTo(0.56837024, 8);
    expect(average(errors)).toBeCloseTo(0.05282289, 8);
    expect(average(errors.map((error, i) => error ** 2 / variance[i]))).toBeCloseTo(1.03272012, 8);
  });

  it('coal ash, leaving out one core at a time', () => {
    const places = placesOf(
      referenceTable<'x' | 'y' | 'ash'>('coalash.csv').map(({ x, y, ash }) => ({ x, y, value: ash })),
    );
    const predictions = krigedWithout(places, { model: 'spherical', nugget: 0.8, sill: 0.6, range: 6 });
    referenceTable<'predicted' | 'variance'>('coalashLeaveOneOut.csv').forEach((row, i) => {
      expect(predictions[i]!.predicted).toBeCloseTo(row.predicted, 9);
      expect(predictions[i]!.variance).toBeCloseTo(row.variance, 9);
    });
    expect(rootMeanSquare(places, predictions)).toBeCloseTo(1.10314209, 8);
    expect(
      average(places.map(({ ln }, i) => (ln - predictions[i]!.predicted) ** 2 / predictions[i]!.variance)),
    ).toBeCloseTo(1.19178308, 8);
  });
});
