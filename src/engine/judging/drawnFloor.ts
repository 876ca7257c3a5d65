import { choleskyWithJitter } from '../algebra/cholesky';
import { quantile } from './quantile';
import { normalQuantile } from '../algebra/normalQuantile';
import { random, type Random } from '../algebra/random';
import type { Draw, Field } from '../mapping/field';
import type { Point } from '../geometry/point';

/** A figure of a floor over its draws: the median of what they give, and where nine of ten of them lie. */
interface Drawn {
  value: number;
  low: number;
  high: number;
}

/** Figures of one floor, µT; `over` is the share of it over the target, 0…1. */
export interface DrawnFloor {
  mean: Drawn;
  median: Drawn;
  p95: Drawn;
  max: Drawn;
  over: Drawn;
}

const PAIRS = 200;
const SEED = 1;

/**
 * Figures of a floor from draws of the field at places spread over it and at the place of the highest estimate, which only
 * `max` looks at. ln B is drawn jointly, as mean + L·z with L·Lᵀ the covariance of the estimate's errors. A figure of the
 * drawn fields spreads as the figure of the true field does; the same figure of the estimate does not, since the estimate is
 * smoother than the field. Where the estimate is a mixture each pair of draws is of one of its laws, each as often as its
 * share. Each z comes with its mirror −z (antithetic variates, Hammersley & Morton 1956), and along the
 * one direction that moves the floor as a whole it is stratified, not drawn: the figures follow that direction most, and a
 * few hundred draws then tell the ends of their intervals. The seed is fixed: the same estimate has the same figures.
 */
export function drawnFloor(
  field: Field,
  places: readonly Point[],
  highest: Point,
  target: number,
): DrawnFloor {
  const all = [...places, highest];
  const m = all.length;
  const laws = field.draws({ xs: all.map(([x]) => x), ys: all.map(([, y]) => y) });
  const roots = rootsOf(laws, m, places.length);
  const chance = random(SEED);
  const figures: Record<keyof DrawnFloor, number[]> = { mean: [], median: [], p95: [], max: [], over: [] };
  const values = new Float64Array(m);
  strata(chance).forEach((upper, k) => {
    const { mean, covariance } = laws[lawOf(laws, k)];
    const { lower, whole } = roots.get(covariance)!;
    const error = drawnError(lower, whole, upper, chance);
    for (const sign of [1, -1]) {
      for (let i = 0; i < m; i++) values[i] = Math.exp(mean[i] + sign * error[i]);
      const floor = values.slice(0, places.length).sort();
      figures.mean.push(floor.reduce((sum, value) => sum + value, 0) / floor.length);
      figures.median.push(quantile(floor, 0.5));
      figures.p95.push(quantile(floor, 0.95));
      figures.max.push(Math.max(floor[floor.length - 1], values[m - 1]));
      figures.over.push(shareAbove(floor, target));
    }
  });
  return {
    mean: drawn(figures.mean),
    median: drawn(figures.median),
    p95: drawn(figures.p95),
    max: drawn(figures.max),
    over: drawn(figures.over),
  };
}

/** The law of pair k. Steps of the golden section visit the shares evenly, and in no order that the strata know. */
function lawOf(laws: readonly Draw[], k: number): number {
  let left = ((k + 0.5) * GOLDEN) % 1;
  const last = laws.length - 1;
  for (let i = 0; i < last; i++) {
    left -= laws[i].weight;
    if (left < 0) return i;
  }
  return last;
}

const GOLDEN = (Math.sqrt(5) - 1) / 2;

interface Root {
  lower: Float64Array;
  whole: Float64Array;
}

/** Of each covariance, which laws may share, its root and the direction that moves the floor as a whole. */
function rootsOf(laws: readonly Draw[], m: number, count: number): Map<Float64Array, Root> {
  const roots = new Map<Float64Array, Root>();
  for (const { covariance } of laws) {
    if (roots.has(covariance)) continue;
    const lower = rootOf(covariance, m);
    roots.set(covariance, { lower, whole: directionOfAll(lower, m, count) });
  }
  return roots;
}

/** The share of ascending values above one, 0…1. */
function shareAbove(ascending: Float64Array, value: number): number {
  let above = 0;
  while (above < ascending.length && ascending[ascending.length - 1 - above] > value) above++;
  return above / ascending.length;
}

/** The upper half of a standard normal, one value a stratum; the mirrors are the lower half. */
const strata = (chance: Random): number[] =>
  Array.from({ length: PAIRS }, (_, k) => normalQuantile(0.5 + (k + chance.next()) / (2 * PAIRS)));

/** The unit vector of z along which the mean of ln B over the first `count` places moves: the mean of L's rows. */
function directionOfAll(lower: Float64Array, m: number, count: number): Float64Array {
  const direction = new Float64Array(m);
  for (let i = 0; i < count; i++) for (let j = 0; j <= i; j++) direction[j] += lower[i * m + j];
  const length = Math.hypot(...direction);
  return length > 0 ? direction.map((value) => value / length) : direction;
}

/** L·z of a drawn z whose part along `whole` is given. */
function drawnError(lower: Float64Array, whole: Float64Array, along: number, chance: Random): Float64Array {
  const m = whole.length;
  const z = Float64Array.from(whole, () => chance.normal());
  const excess = along - z.reduce((sum, value, i) => sum + value * whole[i], 0);
  for (let i = 0; i < m; i++) z[i] += excess * whole[i];
  const error = new Float64Array(m);
  for (let i = 0; i < m; i++) {
    let sum = 0;
    for (let j = 0, at = i * m; j <= i; j++, at++) sum += lower[at] * z[j];
    error[i] = sum;
  }
  return error;
}

/** L of L·Lᵀ = C; where rounding leaves no root at all, every place errs for itself. */
function rootOf(covariance: Float64Array, m: number): Float64Array {
  const scale = Math.max(...covariance.filter((_, at) => at % (m + 1) === 0));
  if (!(scale > 0)) return new Float64Array(m * m);
  const cholesky = choleskyWithJitter(covariance, m, scale);
  return (
    cholesky?.lower ?? covariance.map((value, at) => (at % (m + 1) === 0 ? Math.sqrt(Math.max(0, value)) : 0))
  );
}

function drawn(figures: readonly number[]): Drawn {
  const ascending = Float64Array.from(figures).sort();
  return {
    value: quantile(ascending, 0.5),
    low: quantile(ascending, 0.05),
    high: quantile(ascending, 0.95),
  };
}
