import { expect, it } from 'vitest';
import { usualCounts } from '../../../src/engine/survey/usualCounts';

/** Whether at most k of n come about with probability under 5 %, each with p = 9/10, in whole numbers. */
function isRare(n: number, counts: readonly number[]): boolean {
  const choose = (k: number) => {
    let ways = 1n;
    for (let i = 1n; i <= BigInt(k); i++) ways = (ways * (BigInt(n) - i + 1n)) / i;
    return ways;
  };
  const sum = counts.reduce((total, k) => total + choose(k) * 9n ** BigInt(k), 0n);
  return 20n * sum < 10n ** BigInt(n);
}

const upTo = (k: number) => Array.from({ length: k + 1 }, (_, i) => i);
const from = (k: number, n: number) => upTo(n).slice(k);

it.each([1, 3, 9, 12, 20, 28, 29, 36, 60, 200])(
  'of %i intervals of 90 %% the counts that are no surprise are those whose tails are 5 %% or more, summed in whole numbers',
  (n) => {
    const { fewest, most } = usualCounts(n, 0.9);
    expect(isRare(n, upTo(fewest))).toBe(false);
    if (fewest > 0) expect(isRare(n, upTo(fewest - 1))).toBe(true);
    expect(isRare(n, from(most, n))).toBe(false);
    if (most < n) expect(isRare(n, from(most + 1, n))).toBe(true);
  },
);

it('holds for thousands, whose powers are nothing in floating point, and about the normal law’s bounds there', () => {
  const { fewest, most } = usualCounts(5000, 0.9);
  const sd = Math.sqrt(5000 * 0.9 * 0.1);
  expect(Math.abs(fewest - (4500 - 1.645 * sd))).toBeLessThan(1.5);
  expect(Math.abs(most - (4500 + 1.645 * sd))).toBeLessThan(1.5);
});
