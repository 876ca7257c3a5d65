import { changesOf } from '../sourceKriging/strengthDoubt';
import { columnsOf, remaindersOf, trendAt } from '../sourceKriging/sourceModel';
import { floorOf, spotsOf } from '../sourceKriging/sourceTerms';
import { krigedChanges } from './krigedChanges';
import { strengthsWithout } from '../sourceKriging/strengthsWithout';
import { sumAt } from '../sourceKriging/fitStrengths';
import type { FittedSources } from '../sourceKriging/fitRemainder';
import type { Ground } from './changesWithout';
import type { Place } from '../observations';

/**
 * Source kriging without each place: strengths are found anew, and what they leave is kriged from the others. On the ground
 * the new trend counts exactly, at the places as linear in the strengths, as when a reading is predicted without itself.
 */
export function sourceChanges(
  sources: FittedSources,
  places: readonly Place[],
  ground: Ground,
): Float64Array[] {
  const { model, variogram, doubt } = sources;
  const z = floorOf(model.elevations, ground.level) + ground.height;
  const spots = { xs: ground.xs, ys: ground.ys, zs: Array.from(ground.xs, () => z) };
  const columns = columnsOf(model.terms, spots);
  const trend = trendAt(model, spots);
  const others = changesOf(model, doubt.hidden, spotsOf(places, model.elevations));
  const anew = strengthsWithout(sources, places);
  const kriged = krigedChanges(remaindersOf(model, places), variogram, ground, others);
  return kriged
    .changes((i) => anew[i].steps)
    .map((change, i) =>
      change.map((value, p) => value + 0.5 * Math.log(sumAt(columns, anew[i].found, p)) - trend[p]),
    );
}
