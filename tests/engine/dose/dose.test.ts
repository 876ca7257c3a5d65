import { describe, expect, test } from 'vitest';
import { choleskyWithJitter } from '../../../src/engine/algebra/cholesky';
import { exponential, fakeField } from './fakeField';
import { random } from '../../../src/engine/algebra/random';
import { sharedDose, zoneDose } from '../../../src/engine/dose/dose';
import { zoneOf, type Zone } from '../../../src/engine/dose/zones';
import { peopleOf, pieceDose } from '../../../src/engine/dose/pieceDose';

const spot = (x: number): Zone => ({ ring: [], cells: [[x, 0]] });

test('the constructed day: five places, 2.28 µT·h, mean 0.095 µT', () => {
  const fields = [0.05, 0.1, 0.03, 0.6, 0.08];
  const hours = [8, 9, 2, 1, 4];
  const field = fakeField(
    ([x]) => Math.log(fields[x]),
    () => 0,
  );
  const day = sharedDose(
    field,
    hours.map((h, i) => ({ zone: spot(i), hours: h })),
    1,
  );
  expect(day.dose).toBeCloseTo(2.28, 10);
  expect(day.mean).toBeCloseTo(0.095, 10);
  expect(day.low).toBeCloseTo(2.28, 10);
  expect(day.high).toBeCloseTo(2.28, 10);
});

/** Median and 5th and 95th percentile of the mean field over a zone, by drawing the field at its cells. */
function sampled(zone: Zone, mean: (x: number) => number, cov: ReturnType<typeof exponential>, seed: number) {
  const m = zone.cells.length;
  const C = Float64Array.from(zone.cells.flatMap((a) => zone.cells.map((b) => cov(a, b))));
  const { lower } = choleskyWithJitter(C, m, 1)!;
  const draw = random(seed);
  const means = Array.from({ length: 10_000 }, () => {
    const z = Array.from({ length: m }, () => draw.normal());
    return (
      zone.cells.reduce((sum, [x], i) => {
        let ln = mean(x);
        for (let k = 0; k <= i; k++) ln += lower[i * m + k] * z[k];
        return sum + Math.exp(ln);
      }, 0) / m
    );
  }).sort((a, b) => a - b);
  return { low: means[500], median: means[5000], high: means[9500] };
}

describe('dose of a zone against 10,000 drawn fields', () => {
  test.each([
    { seed: 1, variance: 0.1, range: 3 },
    { seed: 2, variance: 0.5, range: 3 },
    { seed: 3, variance: 0.5, range: 0.5 },
    { seed: 4, variance: 1, range: 1 },
  ])('seed $seed, variance $variance, range $range m', ({ seed, variance, range }) => {
    const zone = zoneOf('bed', { at: [0, 0], angle: 20 }, [1.4, 2], 'left');
    const mean = (x: number) => -2 + 1.5 * x;
    const cov = exponential(variance, range);
    const dose = zoneDose(
      fakeField(([x]) => mean(x), cov),
      zone,
      8,
    );
    const truth = sampled(zone, mean, cov, seed);
    // The sum is only nearly log-normal: 5 % of each figure covers that and the drawing.
    expect(Math.abs(Math.log(dose.mean / truth.median))).toBeLessThan(0.05);
    expect(Math.abs(Math.log(dose.low / 8 / truth.low))).toBeLessThan(0.05);
    expect(Math.abs(Math.log(dose.high / 8 / truth.high))).toBeLessThan(0.05);
  });
});

test('beside a source the mean field lies well above the mean of its logarithms', () => {
  const zone = zoneOf('bed', { at: [1.3, 0], angle: 90 }, [0.9, 2], 'middle');
  const field = fakeField(
    ([x]) => Math.log(1 / Math.max(x, 0.1) ** 2),
    () => 0,
  );
  const logs = zone.cells.reduce((sum, [x]) => sum - 2 * Math.log(Math.max(x, 0.1)), 0) / zone.cells.length;
  expect(zoneDose(field, zone, 1).mean / Math.exp(logs)).toBeGreaterThan(1.3);
});

test('a dose is linear in hours and in the unit of the field', () => {
  const zone = zoneOf('desk', { at: [2, 1], angle: 30 }, [1.2, 0.6], 'middle');
  const inMicrotesla = fakeField(([x]) => -2 + x, exponential(0.3, 1));
  const inMilligauss = fakeField(([x]) => -2 + x + Math.log(10), exponential(0.3, 1));
  const one = zoneDose(inMicrotesla, zone, 4);
  expect(zoneDose(inMicrotesla, zone, 8).high).toBeCloseTo(2 * one.high, 12);
  expect(zoneDose(inMilligauss, zone, 4).dose).toBeCloseTo(10 * one.dose, 12);
});

test('two sleepers: the piece has the mean of their doses, each the dose of the own half', () => {
  const field = fakeField(
    ([x]) => (x > 0 ? Math.log(0.3) : Math.log(0.1)),
    () => 0,
  );
  const half = (side: 'left' | 'right') => zoneOf('bed', { at: [0, 0], angle: 0 }, [1.6, 2], side);
  const dose = pieceDose(() => field, {
    id: 'p1',
    level: 'l1',
    height: 0.6,
    uses: [
      { who: 'A', hours: 8, zone: half('left') },
      { who: 'B', hours: 6, zone: half('right') },
    ],
  })!;
  expect(dose.uses.map(({ who, dose: own }) => [who, own.dose])).toEqual([
    ['A', expect.closeTo(2.4, 10)],
    ['B', expect.closeTo(0.6, 10)],
  ]);
  expect(dose.dose.dose).toBeCloseTo(1.5, 10);
  expect(dose.mean).toBeCloseTo(3 / 14, 10);
  expect(dose.supported).toBe(true);
});

test('a piece that nobody uses has no dose', () => {
  expect(
    pieceDose(
      () =>
        fakeField(
          () => 0,
          () => 0,
        ),
      { id: 'p', level: 'l', height: 1, uses: [] },
    ),
  ).toBeNull();
});

test('people are counted once', () => {
  expect(peopleOf([{ who: 'A' }, { who: 'B' }, { who: 'A' }])).toBe(2);
});
