import type { Field } from '../../../src/engine/mapping/field';
import type { Point } from '../../../src/engine/geometry/point';

/** A field whose estimate and error covariance are given outright, in ln B. */
export function fakeField(mean: (p: Point) => number, covariance: (a: Point, b: Point) => number): Field {
  const points = (xs: ArrayLike<number>, ys: ArrayLike<number>): Point[] =>
    Array.from({ length: xs.length }, (_, i) => [xs[i], ys[i]] as const);
  const cross: Field['cross'] = (a, b) => {
    const columns = points(b.xs, b.ys);
    return Float64Array.from(points(a.xs, a.ys).flatMap((p) => columns.map((q) => covariance(p, q))));
  };
  return {
    predict: (xs, ys, { variance }) => ({
      mean: Float64Array.from(points(xs, ys), mean),
      variance: variance ? Float64Array.from(points(xs, ys), (p) => covariance(p, p)) : null,
    }),
    draws: (all) => [
      { weight: 1, mean: Float64Array.from(points(all.xs, all.ys), mean), covariance: cross(all, all) },
    ],
    cross,
    support: (xs) => ({ doubt: new Float64Array(xs.length), reason: new Uint8Array(xs.length) }),
    nearest: () => 0,
  };
}

/** Exponential covariance: variance at a place, metres over which it falls to 1/e. */
export const exponential =
  (variance: number, range: number) =>
  ([ax, ay]: Point, [bx, by]: Point): number =>
    variance * Math.exp(-Math.hypot(ax - bx, ay - by) / range);
