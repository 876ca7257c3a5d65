import type { Field } from '../../../src/engine/mapping/field';
import type { Point } from '../../../src/engine/geometry/point';

/** One law of ln B, and its share among all. */
interface Law {
  weight: number;
  mean(p: Point): number;
  covariance(a: Point, b: Point): number;
}

/** A field whose estimate and error covariance are given outright, in ln B. */
export const fakeField = (mean: Law['mean'], covariance: Law['covariance']): Field =>
  fakeMixture([{ weight: 1, mean, covariance }]);

/** The same of several laws, one of which holds. */
export function fakeMixture(laws: readonly Law[]): Field {
  const points = (xs: ArrayLike<number>, ys: ArrayLike<number>): Point[] =>
    Array.from({ length: xs.length }, (_, i) => [xs[i], ys[i]] as const);
  const over = (value: (law: Law) => number) => laws.reduce((sum, law) => sum + law.weight * value(law), 0);
  const mean = (p: Point) => over((law) => law.mean(p));
  const covariance = (p: Point, q: Point) =>
    over((law) => law.covariance(p, q) + (law.mean(p) - mean(p)) * (law.mean(q) - mean(q)));
  const between = (a: Point[], b: Point[], shared: Law['covariance']) =>
    Float64Array.from(a.flatMap((p) => b.map((q) => shared(p, q))));
  return {
    predict: (xs, ys, { variance }) => ({
      mean: Float64Array.from(points(xs, ys), mean),
      variance: variance ? Float64Array.from(points(xs, ys), (p) => covariance(p, p)) : null,
    }),
    draws: (all, others = all) =>
      laws.map((law) => ({
        weight: law.weight,
        mean: Float64Array.from(points(all.xs, all.ys), law.mean),
        covariance: between(points(all.xs, all.ys), points(others.xs, others.ys), law.covariance),
      })),
    cross: (a, b) => between(points(a.xs, a.ys), points(b.xs, b.ys), covariance),
    support: (xs) => ({ doubt: new Float64Array(xs.length), reason: new Uint8Array(xs.length) }),
    nearest: () => 0,
  };
}

/** Exponential covariance: variance at a place, metres over which it falls to 1/e. */
export const exponential =
  (variance: number, range: number) =>
  ([ax, ay]: Point, [bx, by]: Point): number =>
    variance * Math.exp(-Math.hypot(ax - bx, ay - by) / range);
