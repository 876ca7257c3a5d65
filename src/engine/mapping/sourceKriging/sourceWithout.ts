import { changesOf } from './strengthDoubt';
import { columnsOf, remaindersOf, trendAt } from './sourceModel';
import { leftOver } from '../krigedWithout';
import { spotsOf } from './sourceTerms';
import { trendVarianceWithout } from '../trend';
import { strengthsWithout } from './strengthsWithout';
import { sumAt } from './fitStrengths';
import type { FittedSources } from './fitRemainder';
import type { Place } from '../observations';
import type { Predictions } from '../leaveOneOut';

/**
 * Each place predicted by source kriging from the others: the strengths are found anew without it, exponents and variogram
 * kept. At the place the new trend counts exactly; at the others, which kriging sums up, what it changes is taken as linear
 * in the strengths, so that the closed form of leaving out serves for all places at once.
 */
export function sourceWithout(sources: FittedSources, places: readonly Place[]): Predictions {
  const { model, variogram, doubt } = sources;
  const spots = spotsOf(places, model.elevations);
  const columns = columnsOf(model.terms, spots);
  const trend = trendAt(model, spots);
  const changes = changesOf(model, doubt.hidden, spots);
  const remainders = remaindersOf(model, places);
  const rows = new Map(
    remainders.map((place, i) => [place, [place.ln, ...changes.map((change) => change[i])]]),
  );
  const anew = strengthsWithout(sources, places);
  return leftOver(remainders, variogram, (place) => rows.get(place)!).map((left, i) => {
    if (!left) return null;
    const [rest, ...open] = left.residuals;
    const { found, steps } = anew[i];
    const linear = steps.reduce((sum, step, k) => sum + step * (changes[k][i] - open[k]), 0);
    return {
      predicted: places[i].ln - rest + (0.5 * Math.log(sumAt(columns, found, i)) - trend[i]) - linear,
      variance: left.variance + trendVarianceWithout(doubt.covariance, open, left.variance),
    };
  });
}
