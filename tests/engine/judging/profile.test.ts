import { describe, expect, test } from 'vitest';
import { exponential, fakeField } from '../dose/fakeField';
import { profileOf } from '../../../src/engine/judging/profile';
import { random } from '../../../src/engine/algebra/random';
import { readingAt } from '../arranging/homes';
import type { AssessWalk } from '../../../src/engine/assess';
import type { Point } from '../../../src/engine/geometry/point';
import type { SurveyReading } from '../../../src/engine/mapping/survey';
import { UNMARKED } from '../../support/readings';

const walk = (more: Partial<AssessWalk> = {}): AssessWalk => ({
  id: 'w1',
  level: 'l1',
  path: [
    [2, 0],
    [2, 20],
  ],
  from: null,
  ...more,
});

const profile = (
  field: (p: Point) => number,
  readings: SurveyReading[],
  target = 0.1,
  of = walk(),
  cov: (a: Point, b: Point) => number = () => 0,
) =>
  profileOf(
    fakeField((p) => Math.log(field(p)), cov),
    of,
    { survey: { ...UNMARKED, readings, method: 'auto' }, target },
  );

const along = (field: (p: Point) => number, ys = [1, 2, 3, 5, 8, 12, 18], x = 2) =>
  ys.map((y) => readingAt([x, y], field([x, y])));

describe('fall-off along a walk', () => {
  test.each([1, 2, 3])('a field as 1/r^%i from the start of the walk', (n) => {
    const field = ([, y]: Point) => 2 / Math.max(y, 0.1) ** n;
    const { falloff, falloffSd } = profile(field, along(field));
    expect(falloff).toBeCloseTo(n, 8);
    expect(falloffSd).toBeCloseTo(0, 8);
  });

  test('from a marked line: distance to it, not along the walk', () => {
    // A line along y = −8, 3 m above where the meter is held.
    const r = ([, y]: Point) => Math.hypot(y + 8, 3);
    const field = (p: Point) => 5 / r(p) ** 2;
    const from = {
      path: [
        [-30, -8],
        [40, -8],
      ] as Point[],
      height: 4,
    };
    expect(profile(field, along(field), 0.1, walk({ from })).falloff).toBeCloseTo(2, 8);
    expect(Math.abs(profile(field, along(field)).falloff! - 2)).toBeGreaterThan(0.5);
  });

  test('from a marked appliance, only from where the field is highest outwards', () => {
    const field = ([x, y]: Point) => 0.3 / Math.hypot(x - 2, y - 6) ** 3;
    const from = { path: [[2, 6]] as Point[], height: 1 };
    const readings = along(field, [6.5, 7, 8, 9, 11]);
    expect(profile(field, readings, 0.1, walk({ from })).falloff).toBeCloseTo(3, 8);
  });

  test('the standard deviation covers the truth as often as it should', () => {
    const draw = random(3);
    let within = 0;
    for (let k = 0; k < 400; k++) {
      const field = ([, y]: Point) => (2 / Math.max(y, 0.1) ** 2) * Math.exp(0.1 * draw.normal());
      const { falloff, falloffSd } = profile(field, along(field));
      if (Math.abs(falloff! - 2) < 2.571 * falloffSd!) within++;
    }
    // t of 5 degrees of freedom: 95 %, with a binomial spread of 1.1 %. The walk's first reading is the highest in nearly all.
    expect(within / 400).toBeGreaterThan(0.91);
    expect(within / 400).toBeLessThan(0.99);
  });

  test('nothing is said where readings do not tell', () => {
    const field = ([, y]: Point) => 2 / Math.max(y, 0.1);
    const none = { falloff: null, falloffSd: null };
    expect(profile(field, along(field, [1, 5]))).toMatchObject(none);
    expect(profile(field, along(field, undefined, 4))).toMatchObject(none);
    expect(
      profile(
        field,
        along(() => 0.1),
      ),
    ).toMatchObject(none);
    expect(
      profile(
        field,
        along(field).map((reading) => ({ ...reading, level: 'l2' })),
      ),
    ).toMatchObject(none);
    expect(
      profile(
        field,
        along(field).map((reading) => ({ ...reading, limit: 'above' as const })),
      ),
    ).toMatchObject(none);
  });
});

describe('where the target is met', () => {
  const line = ([, y]: Point) => 1 / (y + 2);

  test('where the estimate crosses it, between rows too', () => {
    const { targetAt } = profile(line, []);
    expect(targetAt).toEqual([expect.closeTo(8, 2), expect.closeTo(8, 2), expect.closeTo(8, 2)]);
  });

  test('with the interval: earlier at its lower end, later at its upper', () => {
    const { targetAt } = profile(line, [], 0.1, walk(), exponential(0.04, 3));
    const spread = Math.exp(1.6449 * 0.2);
    expect(targetAt![0]).toBeCloseTo(10 / spread - 2, 1);
    expect(targetAt![2]).toBeCloseTo(10 * spread - 2, 1);
  });

  test('an upper end that does not come to it within the walk is left open', () => {
    const { targetAt } = profile(line, [], 0.05, walk(), exponential(0.04, 3));
    expect(targetAt![1]).toBeCloseTo(18, 1);
    expect(targetAt![2]).toBeNull();
  });

  test('never, or from the start', () => {
    expect(profile(line, [], 0.01).targetAt).toBeNull();
    expect(profile(line, [], 2).targetAt).toEqual([0, 0, 0]);
  });

  test('a field that rises again is not met before it has fallen for good', () => {
    const twoHumps = ([, y]: Point) =>
      0.02 + 0.5 * Math.exp(-((y - 3) ** 2)) + 0.5 * Math.exp(-((y - 12) ** 2));
    expect(profile(twoHumps, []).targetAt![1]).toBeGreaterThan(12);
  });
});

test('rows run from end to end of a walk with corners', () => {
  const path: Point[] = [
    [0, 0],
    [3, 0],
    [3, 4],
  ];
  const { rows } = profile(([x, y]) => 0.1 + x + 10 * y, [], 0.1, walk({ path }));
  expect(rows[0].slice(0, 2)).toEqual([0, expect.closeTo(0.1, 10)]);
  expect(rows.at(-1)!.slice(0, 2)).toEqual([7, expect.closeTo(43.1, 10)]);
  expect(rows[12].slice(0, 2)).toEqual([3, expect.closeTo(3.1, 10)]);
});

test('a walk of one point is one place', () => {
  const { rows } = profile(() => 0.2, [], 0.1, walk({ path: [[1, 1]] }));
  expect(rows.every(([d, value]) => d === 0 && Math.abs(value - 0.2) < 1e-12)).toBe(true);
});
