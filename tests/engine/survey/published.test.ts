import { describe, expect, it } from 'vitest';
import { agreement, repeatability } from '../../../src/engine/survey/agreement';
import { errorsInBoth } from '../../../src/engine/survey/errorsInBoth';
import { leastSquaresLine } from '../../../src/engine/survey/leastSquaresLine';
import { onLine } from '../../../src/engine/survey/line';
import { meansOf, propagated } from '../../../src/engine/survey/propagation';
import { overHeights, resultant } from '../../../src/engine/survey/resultant';
import { combined, effectiveDegrees, expanded, rectangular } from '../../../src/engine/survey/uncertainty';
import { random } from '../../../src/engine/algebra/random';

describe('resultant and heights', () => {
  it('is the root of the squares (definition, recomputed)', () => {
    expect(resultant([1.2, 0.5, 0.8])).toBeCloseTo(1.526434, 6);
  });

  // Published spot reports after IEC 62110 (read): 0.5, 1.0 and 1.5 m, µT.
  it.each([
    [[6.195, 6.043, 1.237], 4.492],
    [[0.61, 0.505, 0.229], 0.448],
    [[0.164, 0.703, 0.633], 0.5],
  ] as const)('over three heights: %j', (values, mean) => {
    expect(overHeights([...values])).toBeCloseTo(mean, 3);
  });
});

describe('lines', () => {
  // Pearson's data with York's weights, York 1966 (recomputed).
  it('with errors in both coordinates: York 1966', () => {
    const x = [0, 0.9, 1.8, 2.6, 3.3, 4.4, 5.2, 6.1, 6.5, 7.4];
    const y = [5.9, 5.4, 4.4, 4.6, 3.5, 3.7, 2.8, 2.8, 2.4, 1.5];
    const xWeights = [1000, 1000, 500, 800, 200, 80, 60, 20, 1.8, 1];
    const yWeights = [1, 1.8, 4, 8, 20, 20, 70, 70, 100, 500];
    const line = errorsInBoth(
      x.map((value, i) => ({
        x: value,
        y: y[i],
        xUncertainty: 1 / Math.sqrt(xWeights[i]),
        yUncertainty: 1 / Math.sqrt(yWeights[i]),
      })),
    );
    expect(line.intercept).toBeCloseTo(5.47991022, 8);
    expect(line.interceptUncertainty).toBeCloseTo(0.294970735, 9);
    expect(line.slope).toBeCloseTo(-0.480533407, 9);
    expect(line.slopeUncertainty).toBeCloseTo(0.057985009, 9);
    expect(line.misfit).toBeCloseTo(11.8663532, 7);
  });

  // NIST Statistical Reference Datasets, linear regression, Norris (read): columns y, x.
  it('calibration: NIST Norris', () => {
    const rows = NORRIS.trim().split(/\s+/).map(Number);
    const y = rows.filter((_, i) => i % 2 === 0);
    const x = rows.filter((_, i) => i % 2 === 1);
    expect(x).toHaveLength(36);
    const line = leastSquaresLine(x, y);
    expect(line.intercept).toBeCloseTo(-0.262323073774029, 11);
    expect(line.interceptUncertainty).toBeCloseTo(0.23281823, 8);
    expect(line.slope).toBeCloseTo(1.00211681802045, 13);
    expect(line.slopeUncertainty).toBeCloseTo(0.0004298, 8);
    expect(line.residualDeviation).toBeCloseTo(0.884796396144373, 12);
  });

  // JCGM 100:2008, H.3 (inputs from memory, values recomputed).
  it('thermometer: JCGM 100 H.3', () => {
    const t = [21.521, 22.012, 22.512, 23.003, 23.507, 23.999, 24.513, 25.002, 25.503, 26.01, 26.511];
    const b = [-171, -169, -166, -159, -164, -165, -156, -157, -159, -161, -160].map((value) => value / 1000);
    const line = leastSquaresLine(
      t.map((value) => value - 20),
      b,
    );
    expect(line.intercept).toBeCloseTo(-0.1712, 5);
    expect(line.interceptUncertainty).toBeCloseTo(0.00288, 5);
    expect(line.slope).toBeCloseTo(0.0021827, 7);
    expect(line.slopeUncertainty).toBeCloseTo(0.000668, 6);
    expect(line.correlation).toBeCloseTo(-0.93, 3);
    expect(line.residualDeviation).toBeCloseTo(0.0034976, 7);
    const at30 = onLine(line, 10);
    expect(at30.value).toBeCloseTo(-0.14938, 5);
    expect(at30.uncertainty).toBeCloseTo(0.00414, 5);
  });

  it('needs two different x', () => {
    expect(() => leastSquaresLine([1, 1, 1], [1, 2, 3])).toThrow();
    expect(() => errorsInBoth([{ x: 1, y: 2, xUncertainty: 0.1, yUncertainty: 0.1 }])).toThrow();
  });
});

// Bland & Altman 1986, Lancet i:307, peak flow of 17 people (data read, values recomputed; repeatabilities by a secondary
// text): large meter twice, small meter twice.
describe('two meters: Bland & Altman 1986', () => {
  const people = [
    [494, 490, 512, 525],
    [395, 397, 430, 415],
    [516, 512, 520, 508],
    [434, 401, 428, 444],
    [476, 470, 500, 500],
    [557, 611, 600, 625],
    [413, 415, 364, 460],
    [442, 431, 380, 390],
    [650, 638, 658, 642],
    [433, 429, 445, 432],
    [417, 420, 432, 420],
    [656, 633, 626, 605],
    [267, 275, 260, 227],
    [478, 492, 477, 467],
    [178, 165, 259, 268],
    [423, 372, 350, 370],
    [427, 421, 451, 443],
  ];

  it('limits of agreement of the first of each meter', () => {
    const { bias, deviation, low, high } = agreement(people.map(([large, , small]) => [large, small]));
    expect(bias).toBeCloseTo(-2.117647, 6);
    expect(deviation).toBeCloseTo(38.76513, 5);
    expect(low).toBeCloseTo(-79.6479, 4);
    expect(high).toBeCloseTo(75.4126, 4);
  });

  it('repeatability of each', () => {
    expect(repeatability(people.map(([, , first, second]) => [first, second]))).toBeCloseTo(28.158, 3);
    expect(repeatability(people.map(([first, second]) => [first, second]))).toBeCloseTo(21.647, 3);
  });
});

describe('uncertainty', () => {
  // JCGM 100:2008, H.1 (inputs from memory, values recomputed; printed 32 and 93 nm).
  it('end gauge: JCGM 100 H.1', () => {
    const components = [
      { uncertainty: 25, degrees: 18 },
      { uncertainty: 9.68, degrees: 25.6 },
      { uncertainty: 2.9, degrees: 50 },
      { uncertainty: 16.68, degrees: 2 },
    ];
    expect(combined(components.map(({ uncertainty }) => uncertainty))).toBeCloseTo(31.71, 2);
    expect(effectiveDegrees(components)).toBeCloseTo(16.64, 2);
    expect(expanded(components, 0.99)).toBeCloseTo(92.6, 1);
  });

  // JCGM 100:2008, H.2 (inputs from memory, values recomputed; u(X) printed 0.295).
  it('resistance and reactance observed together: JCGM 100 H.2', () => {
    const volts = [5.007, 4.994, 5.005, 4.99, 4.999];
    const amperes = [19.663, 19.639, 19.64, 19.685, 19.678].map((value) => value / 1000);
    const phase = [1.0456, 1.0438, 1.0468, 1.0428, 1.0433];
    const { values, covariance } = propagated(
      ([v, i, angle]) => [(v / i) * Math.cos(angle), (v / i) * Math.sin(angle), v / i],
      meansOf(volts.map((v, k) => [v, amperes[k], phase[k]])),
    );
    const u = covariance.map((row, k) => Math.sqrt(row[k]));
    expect(values[0]).toBeCloseTo(127.73217, 5);
    expect(values[1]).toBeCloseTo(219.84651, 5);
    expect(values[2]).toBeCloseTo(254.2597, 5);
    expect(u[0]).toBeCloseTo(0.07107, 5);
    expect(u[1]).toBeCloseTo(0.29558, 5);
    expect(u[2]).toBeCloseTo(0.23634, 5);
    expect(covariance[0][1] / (u[0] * u[1])).toBeCloseTo(-0.588, 3);
    expect(covariance[0][2] / (u[0] * u[2])).toBeCloseTo(-0.485, 3);
    expect(covariance[1][2] / (u[1] * u[2])).toBeCloseTo(0.993, 3);
  });

  // JCGM 101:2008, 9.2.3 (from memory, recomputed): the sum of four rectangular quantities of unit variance.
  it('four rectangular quantities: JCGM 101 9.2.3', () => {
    const half = Math.sqrt(3);
    expect(combined([half, half, half, half].map(rectangular))).toBeCloseTo(2, 12);
    const draws = 400_000;
    const { between } = random(20081);
    const sums = Float64Array.from({ length: draws }, () => {
      let sum = 0;
      for (let k = 0; k < 4; k++) sum += between(-half, half);
      return sum;
    }).sort();
    // The 2.5 % and 97.5 % quantiles of this many draws scatter by 0.010.
    expect(Math.abs(sums[Math.round(0.025 * draws)] + 3.8794)).toBeLessThan(0.03);
    expect(Math.abs(sums[Math.round(0.975 * draws)] - 3.8794)).toBeLessThan(0.03);
  });
});

const NORRIS = `
0.1 0.2   338.8 337.4   118.1 118.2   888.0 884.6   9.2 10.1   228.1 226.5   668.5 666.3   998.5 996.3   449.1 448.6
778.9 777.0   559.2 558.2   0.3 0.4   0.1 0.6   778.1 775.5   668.8 666.9   339.3 338.0   448.9 447.5   10.8 11.6
557.7 556.0   228.3 228.1   998.0 995.8   888.8 887.6   119.6 120.2   0.3 0.3   0.6 0.3   557.6 556.8   339.3 339.1
888.0 887.2   998.5 999.0   778.9 779.0   10.2 11.1   117.6 118.3   228.9 229.2   668.4 669.1   449.2 448.9   0.2 0.5
`;
