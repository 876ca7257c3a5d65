/** Where a function is least, as far as was searched. */
interface Minimum {
  at: number;
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
): Minimum {
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
