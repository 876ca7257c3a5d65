import { describe, expect, it } from 'vitest';
import { ABREAST, abreast, solveLowerMany, startAbreast } from '../../../src/engine/algebra/solveLowerMany';
import { solveLower } from '../../../src/engine/algebra/cholesky';
import { random } from '../../../src/engine/algebra/random';

describe('many right-hand sides at once', () => {
  // Odd and even, on both sides of one panel and of two; one column to more than are solved together.
  it.each(
    [1, 2, 7, 255, 256, 257, 513].flatMap((n) =>
      [1, 3, 25].flatMap((count) => [0, 1, 5].filter((from) => from < n).map((from) => [n, count, from])),
    ),
  )('n = %d, %d columns, from row %d: as one by one', (n, count, from) => {
    const chance = random(n + count + from);
    const lower = new Float64Array(n * n);
    for (let i = 0; i < n; i++) {
      for (let j = 0; j < i; j++) lower[i * n + j] = chance.between(-1, 1) / Math.sqrt(n);
      lower[i * n + i] = chance.between(1, 2);
    }
    const cholesky = { n, lower, jitter: 0 };
    const columns = Array.from({ length: count }, () =>
      Float64Array.from({ length: n }, (_, i) => (i < from ? 0 : chance.normal())),
    );
    const V = abreast(count, n);
    columns.forEach((column, q) => column.forEach((b, i) => (V[startAbreast(q, n) + ABREAST * i] = b)));
    solveLowerMany(cholesky, V, from);
    columns.forEach((column, q) =>
      solveLower(cholesky, column).forEach((y, i) =>
        expect(V[startAbreast(q, n) + ABREAST * i]).toBeCloseTo(y, 10),
      ),
    );
  });
});
