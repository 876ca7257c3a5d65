import { describe, expect, test } from 'vitest';
import { choleskyWithJitter } from '../../../src/engine/algebra/cholesky';
import {
  decide,
  dosesOf,
  jointOf,
  normalBelow,
  oddsBetween,
  widened,
  type Stay,
} from '../../../src/engine/arranging/odds';
import { exponential, fakeField } from '../dose/fakeField';
import { random } from '../../../src/engine/algebra/random';
import { zoneOf } from '../../../src/engine/dose/zones';
import type { FieldAt } from '../../../src/engine/dose/fieldAt';
import type { Point } from '../../../src/engine/geometry/point';

type Spent = Stay & { hours: number };

const stay = (at: Point, angle = 0, more: Partial<Spent> = {}): Spent => ({
  level: 'l1',
  height: 0.6,
  zone: zoneOf('bed', { at, angle }, [0.9, 2], 'middle'),
  hours: 8,
  ...more,
});

/** Odds that the second day is lower, with the covariance made wider as after leave-one-out. */
function oddsOf(fieldAt: FieldAt, before: Spent[], after: Spent[], meanSquareZ = 1): number {
  const stays = [...before, ...after];
  const day = (first: boolean) => (i: number) => (i < before.length === first ? stays[i].hours : 0);
  const joint = widened(jointOf(fieldAt, stays), { meanSquareZ });
  return oddsBetween(dosesOf(joint, stays, [day(true), day(false)]), 0, 1);
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
  expect(oddsOf(fieldAt, [stay([0, 0])], [upstairs])).toBeCloseTo(normalBelow(0.3), 6);
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

test.each([
  [1, 0.5, 0.95, 'move'],
  [1, 0.9, 0.9, 'move'],
  [1, 0.91, 0.99, 'stay'],
  [1, 0.5, 0.89, 'measure-both'],
  [1, 0.5, 0.7, 'measure-both'],
  [1, 0.5, 0.69, 'stay'],
  [1, 1.2, 0.2, 'stay'],
  [1, 0.5, null, 'stay'],
] as const)('from %f to %f µT·h at odds %s: %s', (before, after, odds, word) => {
  expect(decide(before, after, odds)).toBe(word);
});

test.each([
  [0, 0.5],
  [1.6448536, 0.95],
  [-1.959964, 0.025],
  [3, 0.9986501],
])('a standard normal lies below %f with probability %f', (z, probability) => {
  expect(normalBelow(z)).toBeCloseTo(probability, 6);
});
