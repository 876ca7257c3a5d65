import { krige } from '../kriging';
import { krigedWeights } from '../krigedWeights';
import { leftOver } from '../krigedWithout';
import { planeOf } from '../plane';
import { samePoint } from '../leaveOneOut';
import type { Ground } from './changesWithout';
import type { Place } from '../observations';
import type { Variogram } from '../variogram';

/**
 * Kriging without each place in closed form: a datum equal to what the others predict changes nothing, so leaving J out is
 * to take its residuals r_J (`leftOver`) off its values, and every estimate changes by −Σ λ_j r_j with λ its weights.
 * Beside ln B other values may be kriged, `others[k]` of each place, and a place left out may take `steps` of them off all
 * values: what a trend that is found anew does.
 */
export function krigedChanges(
  places: readonly Place[],
  variogram: Variogram,
  ground: Ground,
  others: readonly Float64Array[] = [],
) {
  const plane = planeOf(places, ground.level, ground.height);
  const n = plane.places.length;
  const m = ground.xs.length;
  const weights = krigedWeights(krige(plane, variogram), plane, ground);
  // At the ground's height, with what another height leaves open as noise: then all of a level are one plane.
  const levelled = plane.places.map((place, j) => ({
    ...place,
    height: ground.height,
    variance: plane.noise[j],
  }));
  const at = new Map(places.map((place, i) => [place, i]));
  const own = plane.places.map((place) => at.get(place)!);
  const told = others.map((values) =>
    Float64Array.from({ length: m }, (_, p) =>
      own.reduce((sum, i, j) => sum + weights[p * n + j] * values[i], 0),
    ),
  );
  const index = new Map(levelled.map((place, j) => [place, j]));
  const left = leftOver(levelled, variogram, (place) => [
    place.ln,
    ...others.map((values) => values[own[index.get(place)!]]),
  ]);

  /** Of every place, also those of other levels, which change what is kriged here by their steps alone. */
  const changes = (stepsOf: (i: number) => readonly number[]): Float64Array[] =>
    places.map((place, i) => {
      const steps = stepsOf(i);
      const change = new Float64Array(m);
      steps.forEach((step, k) => told[k].forEach((value, p) => (change[p] -= step * value)));
      const j = own.indexOf(i);
      if (place.level !== ground.level || !left[j]) return change;
      for (const l of samePoint(levelled, j)) {
        const [rest, ...open] = left[l]!.residuals;
        const residual = rest - steps.reduce((sum, step, k) => sum + step * open[k], 0);
        for (let p = 0; p < m; p++) change[p] -= weights[p * n + l] * residual;
      }
      return change;
    });
  return { changes };
}
