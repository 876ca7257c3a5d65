import { choleskyWithJitter, solve } from '../algebra/cholesky';
import { byPlane, samePoint } from './leaveOneOut';
import { krige, withValues } from './kriging';
import { ABREAST, TOGETHER, abreast, solveLowerMany, startAbreast } from '../algebra/solveLowerMany';
import type { Kriging } from './kriging';
import type { Place } from './observations';
import type { Predictions } from './leaveOneOut';
import type { Variogram } from './variogram';

/** What a place shows of some values less what the others would have given, and the variance of such a difference. */
export interface Left {
  residuals: number[];
  variance: number;
}

/** Each place predicted by ordinary kriging from the others of its level. */
export const krigedWithout = (places: readonly Place[], variogram: Variogram): Predictions =>
  leftOver(places, variogram, ({ ln }) => [ln]).map(
    (left, i) => left && { predicted: places[i].ln - left.residuals[0], variance: left.variance },
  );

/**
 * What kriging from the others of its level leaves of each place's values, in closed form: with
 * Q = K⁻¹ − K⁻¹11ᵀK⁻¹/1ᵀK⁻¹1 and J the places of one point of the plan, the residuals are Q_JJ⁻¹(Qz)_J and their covariance
 * is Q_JJ⁻¹ (Dubrule 1983 for one place; Ginsbourger & Schärer 2021 for several). Qz is what kriging calls dual; of Q no more
 * is made than the blocks asked. Every place has as many values; null for the only place of a level.
 */
export function leftOver(
  places: readonly Place[],
  variogram: Variogram,
  valuesOf: (place: Place) => readonly number[],
): (Left | null)[] {
  return byPlane(places, (plane, members) => {
    const kriging = krige(plane, variogram);
    const values = plane.places.map(valuesOf);
    const duals = values[0].map(
      (_, c) =>
        withValues(
          kriging,
          values.map((row) => row[c]),
        ).dual,
    );
    const asked = members.map((i) => ({ i, group: samePoint(plane.places, i) }));
    return together(asked).flatMap((batch) => {
      const blocks = blocksOf(
        kriging,
        batch.map(({ group }) => group),
      );
      return batch.map(({ i, group }, k) => without(kriging.n, duals, group, i, blocks[k]));
    });
  });
}

interface Asked {
  i: number;
  group: readonly number[];
}

/** Neighbours taken together while their groups come to no more columns than are worth solving together. */
function together(asked: readonly Asked[]): Asked[][] {
  const batches: Asked[][] = [];
  let room = 0;
  for (const one of asked) {
    if (one.group.length > room) {
      batches.push([]);
      room = TOGETHER;
    }
    batches[batches.length - 1].push(one);
    room -= one.group.length;
  }
  return batches;
}

function without(
  n: number,
  duals: readonly Float64Array[],
  group: readonly number[],
  i: number,
  Q: Float64Array,
): Left | null {
  if (group.length === n) return null;
  const block = choleskyWithJitter(Q, group.length, 0);
  if (!block) return null;
  const own = group.indexOf(i);
  const ofBlock = (values: number[]) => solve(block, values)[own];
  return {
    residuals: duals.map((dual) => ofBlock(group.map((j) => dual[j]))),
    variance: ofBlock(group.map((j) => (j === i ? 1 : 0))),
  };
}

/**
 * Q_JJ of each group J, row-major: column j of K⁻¹ is L⁻ᵀL⁻¹e_j, and 1ᵀK⁻¹e_j is (L⁻¹1)·(L⁻¹e_j). L⁻¹e_j is 0 before j,
 * which over all j leaves a third of the work.
 */
function blocksOf(
  { cholesky, ones, precision }: Kriging,
  groups: readonly (readonly number[])[],
): Float64Array[] {
  const { n } = cholesky;
  const places = groups.flat();
  const from = Math.min(...places);
  const V = abreast(places.length, n);
  const start = (c: number) => startAbreast(c, n);
  places.forEach((j, c) => (V[start(c) + ABREAST * j] = 1));
  solveLowerMany(cholesky, V, from);
  const totals = places.map((_, c) => {
    let sum = 0;
    for (let i = from, at = start(c) + ABREAST * from; i < n; i++, at += ABREAST) sum += ones[i] * V[at];
    return sum;
  });
  const entry = (c: number, d: number) => {
    let sum = 0;
    for (
      let i = from, a = start(c) + ABREAST * from, b = start(d) + ABREAST * from;
      i < n;
      i++, a += ABREAST, b += ABREAST
    )
      sum += V[a] * V[b];
    return sum - (totals[c] * totals[d]) / precision;
  };
  let first = 0;
  return groups.map((group) => {
    const own = group.map((_, k) => first + k);
    first += group.length;
    return Float64Array.from(own.flatMap((c) => own.map((d) => entry(c, d))));
  });
}
