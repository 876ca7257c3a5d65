/** Where a function is least, as far as was searched. */
export interface Minimum<At> {
  at: At;
  value: number;
}

const GOLDEN = (Math.sqrt(5) - 1) / 2;

/**
 * The least of a function of one number between two bounds, to within `tolerance` of its place, by golden section
 * (Kiefer 1953): the true least where f falls and then rises, some low place elsewhere.
 */
export function minimiseBetween(
  f: (x: number) => number,
  low: number,
  high: number,
  tolerance = 1e-6,
): Minimum<number> {
  let [a, b] = [low, high];
  let x1 = b - GOLDEN * (b - a);
  let x2 = a + GOLDEN * (b - a);
  let f1 = f(x1);
  let f2 = f(x2);
  while (b - a > tolerance) {
    if (f1 <= f2) {
      [b, x2, f2] = [x2, x1, f1];
      x1 = b - GOLDEN * (b - a);
      f1 = f(x1);
    } else {
      [a, x1, f1] = [x1, x2, f2];
      x2 = a + GOLDEN * (b - a);
      f2 = f(x2);
    }
  }
  return f1 <= f2 ? { at: x1, value: f1 } : { at: x2, value: f2 };
}

/**
 * A low place of a function of several numbers without derivatives (Nelder & Mead 1965, standard coefficients). `steps`
 * gives the size of the first simplex along each axis. Ends when its values differ by less than `tolerance` of their size
 * or after `limit` rounds. NaN counts as worst, so f may refuse a place by returning NaN
 * or Infinity; a least value on the very edge of what it refuses is not found reliably.
 */
export function minimise(
  f: (x: readonly number[]) => number,
  start: readonly number[],
  steps: readonly number[],
  { tolerance = 1e-12, limit = 500 } = {},
): Minimum<number[]> {
  const n = start.length;
  const look = (at: number[]): Minimum<number[]> => {
    const value = f(at);
    return { at, value: Number.isNaN(value) ? Infinity : value };
  };
  const simplex = [
    look([...start]),
    ...steps.map((step, i) => look(start.map((x, j) => (i === j ? x + step : x)))),
  ];
  const order = () => simplex.sort((a, b) => a.value - b.value);
  order();
  for (let round = 0; round < limit; round++) {
    const best = simplex[0];
    const worst = simplex[n];
    if (
      Math.abs(worst.value - best.value) <= tolerance * (Math.abs(worst.value) + Math.abs(best.value)) &&
      width(simplex) < 1e-7
    )
      break;
    const middle = start.map(
      (_, j) => simplex.slice(0, n).reduce((sum, corner) => sum + corner.at[j], 0) / n,
    );
    const towards = (factor: number) => look(middle.map((m, j) => m + factor * (worst.at[j] - m)));
    const reflected = towards(-1);
    if (reflected.value < best.value) {
      const further = towards(-2);
      simplex[n] = further.value < reflected.value ? further : reflected;
    } else if (reflected.value < simplex[n - 1].value) {
      simplex[n] = reflected;
    } else {
      const inner = reflected.value < worst.value ? towards(-0.5) : towards(0.5);
      if (inner.value < Math.min(reflected.value, worst.value)) simplex[n] = inner;
      else
        for (let i = 1; i <= n; i++)
          simplex[i] = look(simplex[i].at.map((x, j) => best.at[j] + (x - best.at[j]) / 2));
    }
    order();
  }
  return simplex[0];
}

function width(simplex: Minimum<number[]>[]): number {
  const best = simplex[0].at;
  return Math.max(
    ...simplex.map(({ at }) =>
      Math.max(...at.map((x, j) => Math.abs(x - best[j]) / (1 + Math.abs(best[j])))),
    ),
  );
}
