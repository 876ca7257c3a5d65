import { describe, expect, test } from 'vitest';
import { choleskyWithJitter } from '../../../src/engine/algebra/cholesky';
import { exponential, fakeField, fakeMixture } from './fakeField';
import { middleOf, oddsBetween, type SumsOfDraw } from '../../../src/engine/dose/overDraws';
import { normalShare } from '../../../src/engine/algebra/normalShare';
import { random } from '../../../src/engine/algebra/random';
import { zoneMeans, type Stay } from '../../../src/engine/dose/zoneMeans';
import { zoneOf } from '../../../src/engine/dose/zones';
import type { FieldAt } from '../../../src/engine/dose/fieldAt';
import type { Points } from '../../../src/engine/mapping/covarianceMatrix';
import type { Point } from '../../../src/engine/geometry/point';

type Spent = Stay & { hours: number };

const stay = (at: Point, angle = 0, more: Partial<Spent> = {}): Spent => ({
  level: 'l1',
  height: 0.6,
  zone: zoneOf('bed', { at, angle }, [0.9, 2], 'middle'),
  hours: 8,
  ...more,
});

/** Odds that the second day is lower, with the doubt made wider as after leave-one-out. */
function oddsOf(fieldAt: FieldAt, before: Spent[], after: Spent[], meanSquareZ = 1): number {
  const stays = [...before, ...after];
  const day = (first: boolean) => stays.map(({ hours }, i) => (i < before.length === first ? hours : 0));
  return oddsBetween(zoneMeans(fieldAt, { meanSquareZ })(stays).widened([day(true), day(false)]), 0, 1);
}

describe('odds against 10,000 drawn fields', () => {
  test.each(Array.from({ length: 16 }, (_, i) => 400 + i))('seed %i', (seed) => {
    const draw = random(seed);
    const [gx, gy] = [draw.between(-0.3, 0.3), draw.between(-0.3, 0.3)];
    const mean = ([x, y]: Point) => -2 + gx * x + gy * y;
    const cov = exponential(draw.between(0.05, 0.8), draw.between(0.5, 4));
    const now = stay([draw.between(0, 4), draw.between(0, 4)], 90 * draw.below(4));
    const then = stay([draw.between(0, 4), draw.between(0, 4)], 90 * draw.below(4));
    const odds = oddsOf(() => fakeField(mean, cov), [now], [then]);

    const cells = [...now.zone.cells, ...then.zone.cells];
    const m = cells.length;
    const C = Float64Array.from(cells.flatMap((a) => cells.map((b) => cov(a, b))));
    const { lower } = choleskyWithJitter(C, m, 1)!;
    let lowerThere = 0;
    for (let k = 0; k < 10_000; k++) {
      const z = Array.from({ length: m }, () => draw.normal());
      const fields = cells.map((cell, i) => {
        let ln = mean(cell);
        for (let j = 0; j <= i; j++) ln += lower[i * m + j] * z[j];
        return Math.exp(ln);
      });
      const half = fields.slice(0, now.zone.cells.length).reduce((sum, value) => sum + value, 0);
      if (fields.slice(now.zone.cells.length).reduce((sum, value) => sum + value, 0) < half) lowerThere++;
    }
    expect(Math.abs(odds - lowerThere / 10_000)).toBeLessThan(0.06);
  });
});

test('odds of a place and of the way back add up to one', () => {
  const fieldAt = () => fakeField(([x]) => -2 + 0.2 * x, exponential(0.4, 2));
  const [a, b] = [stay([0, 0]), stay([3, 1], 90)];
  const there = oddsOf(fieldAt, [a], [b]);
  expect(there).toBeLessThan(0.5);
  expect(there + oddsOf(fieldAt, [b], [a])).toBeCloseTo(1, 6);
});

test('the same place is as likely lower as higher', () => {
  const fieldAt = () => fakeField(() => -2, exponential(0.4, 2));
  expect(oddsOf(fieldAt, [stay([0, 0])], [stay([0, 0])])).toBe(0.5);
});

test('what does not move takes nothing from the odds but weight', () => {
  const fieldAt = () => fakeField(([x]) => -2 - 0.3 * x, exponential(0.2, 2));
  const [from, to, desk] = [stay([0, 0]), stay([3, 0]), stay([6, 0], 0, { hours: 4 })];
  const alone = oddsOf(fieldAt, [from], [to]);
  const withDesk = oddsOf(fieldAt, [from, desk], [to, desk]);
  expect(withDesk).toBeCloseTo(alone, 1);
});

test('levels err independently: a shared offset does not cancel between them', () => {
  const fieldAt = (level: string) =>
    fakeField(
      () => (level === 'l1' ? -2 : -2.3),
      () => 0.5,
    );
  const upstairs = stay([0, 0], 0, { level: 'l2' });
  const oneLevel = () =>
    fakeField(
      ([x]) => (x < 10 ? -2 : -2.3),
      () => 0.5,
    );
  expect(oddsOf(oneLevel, [stay([0, 0])], [stay([20, 0])])).toBe(1);
  expect(oddsOf(fieldAt, [stay([0, 0])], [upstairs])).toBeCloseTo(normalShare(0.3), 6);
});

test('heights of one level err together', () => {
  const fieldAt = () =>
    fakeField(
      () => -2,
      () => 0.5,
    );
  const higher = stay([4, 0], 0, { height: 1, hours: 7.9 });
  expect(oddsOf(fieldAt, [stay([0, 0])], [higher])).toBe(1);
});

test('wider intervals make odds less sure', () => {
  const fieldAt = () => fakeField(([x]) => -2 - 0.2 * x, exponential(0.2, 2));
  const odds = (inflation: number) => oddsOf(fieldAt, [stay([0, 0])], [stay([3, 0])], inflation);
  expect(odds(4)).toBeLessThan(odds(1));
  expect(odds(4)).toBeGreaterThan(0.5);
});

test('intervals that leave-one-out found too wide are not made narrower', () => {
  const fieldAt = () => fakeField(([x]) => -2 - 0.2 * x, exponential(0.2, 2));
  const odds = (meanSquareZ: number) => oddsOf(fieldAt, [stay([0, 0])], [stay([3, 0])], meanSquareZ);
  expect(odds(0.4)).toBe(odds(1));
});

describe('a field that is one of several laws', () => {
  const laws = (seed: number) => {
    const draw = random(seed);
    return Array.from({ length: 5 }, () => {
      const [base, gx, gy] = [draw.between(-2.5, -1.5), draw.between(-0.4, 0.4), draw.between(-0.4, 0.4)];
      return {
        weight: 0.2,
        mean: ([x, y]: Point) => base + gx * x + gy * y,
        covariance: exponential(draw.between(0.01, 0.3), draw.between(0.5, 4)),
      };
    });
  };

  test.each(Array.from({ length: 8 }, (_, i) => 430 + i))(
    'odds and interval against 10,000 drawn fields, seed %i',
    (seed) => {
      const draw = random(1000 + seed);
      const all = laws(seed);
      const now = stay([draw.between(0, 4), draw.between(0, 4)], 90 * draw.below(4));
      const then = stay([draw.between(0, 4), draw.between(0, 4)], 90 * draw.below(4));
      const cells = [...now.zone.cells, ...then.zone.cells];
      const m = cells.length;
      const roots = all.map(({ covariance }) => {
        const C = Float64Array.from(cells.flatMap((a) => cells.map((b) => covariance(a, b))));
        return choleskyWithJitter(C, m, 1)!.lower;
      });
      const doses: number[] = [];
      let lowerThere = 0;
      for (let k = 0; k < 10_000; k++) {
        const law = draw.below(all.length);
        const z = Array.from({ length: m }, () => draw.normal());
        const fields = cells.map((cell, i) => {
          let ln = all[law].mean(cell);
          for (let j = 0; j <= i; j++) ln += roots[law][i * m + j] * z[j];
          return Math.exp(ln);
        });
        const mean = (values: number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;
        const before = mean(fields.slice(0, now.zone.cells.length));
        doses.push(before);
        if (mean(fields.slice(now.zone.cells.length)) < before) lowerThere++;
      }
      const field = fakeMixture(all);
      expect(Math.abs(oddsOf(() => field, [now], [then]) - lowerThere / 10_000)).toBeLessThan(0.06);
      const said = middleOf(zoneMeans(() => field)([now]).said([[1]]), 0);
      const below = (value: number) => doses.filter((dose) => dose < value).length / doses.length;
      expect(Math.abs(below(said.median) - 0.5)).toBeLessThan(0.03);
      expect(Math.abs(below(said.low) - 0.05)).toBeLessThan(0.02);
      expect(Math.abs(below(said.high) - 0.95)).toBeLessThan(0.02);
    },
  );

  test('a gain that every law has is sure, though the laws differ by more than the gain', () => {
    const field = fakeMixture(
      [-3, -2, -1].map((base) => ({
        weight: 1 / 3,
        mean: ([x]: Point) => base - 0.1 * x,
        covariance: () => 1e-6,
      })),
    );
    expect(oddsOf(() => field, [stay([0, 0])], [stay([3, 0])])).toBe(1);
  });

  test('what leave-one-out asks for more widens all of the doubt, within a law and between them', () => {
    const all = laws(450);
    const spot = { ...stay([1, 2]), zone: { ring: [], cells: [[1, 2] as const] } };
    const means = zoneMeans(() => fakeMixture(all), { meanSquareZ: 2.5 })([spot]);
    const lnVariance = (draws: SumsOfDraw[]) => {
      const middle = draws.reduce((sum, { weight, ln }) => sum + weight * ln[0], 0);
      return draws.reduce(
        (sum, { weight, ln, covariance }) => sum + weight * (covariance[0][0] + (ln[0] - middle) ** 2),
        0,
      );
    };
    expect(lnVariance(means.widened([[1]])) / lnVariance(means.said([[1]]))).toBeCloseTo(2.5, 9);
  });
});

describe('what is known of zones', () => {
  const asked: number[] = [];
  const field = fakeField(([x]) => -2 - 0.2 * x, exponential(0.3, 2));
  const counted = () => ({
    ...field,
    draws: (points: Points, others = points) => {
      asked.push(points.xs.length * others.xs.length);
      return field.draws(points, others);
    },
  });
  const [bed, desk, there] = [stay([0, 0]), stay([2, 2], 90, { height: 1 }), stay([3, 1])];
  const day = [
    [1, 0, 0],
    [0, 0, 1],
    [0.2, 0.5, 0.3],
  ];
  const means = zoneMeans(counted);
  const first = means([bed, desk, there]).said(day);

  test('is not asked for again', () => {
    const before = asked.length;
    expect(means([bed, desk, there]).said(day)).toEqual(first);
    expect(means([there, stay([0, 0])]).said([[0, 1]])[0].ln[0]).toBe(first[0].ln[0]);
    expect(asked.length).toBe(before);
  });

  test('is the same in whatever order it was asked for', () => {
    const other = zoneMeans(counted);
    other([there]);
    other([desk, bed]);
    const [{ ln, covariance }] = other([bed, desk, there]).said(day);
    ln.forEach((value, a) => expect(value).toBeCloseTo(first[0].ln[a], 12));
    covariance.flat().forEach((value, a) => expect(value).toBeCloseTo(first[0].covariance.flat()[a], 12));
  });

  test('of one more zone asks for that zone alone, beside those it is new to', () => {
    const all = [bed, desk, there];
    asked.length = 0;
    means([...all, stay([4, 4])]);
    // Beside all of its plane, and beside the one above it.
    expect(asked).toEqual([30 * 90, 30 * 30]);
    asked.length = 0;
    means([...all, stay([5, 5], 0, { height: 1 })]);
    // Those below it beside it alone, and it beside all of its plane.
    expect(asked).toEqual([60 * 30, 30 * 60]);
  });
});
