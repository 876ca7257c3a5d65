import { changesOf } from './strengthDoubt';
import { columnsOf, remaindersOf, trendAt } from './sourceModel';
import { leftOver } from '../krigedWithout';
import { spotsOf } from './sourceTerms';
import { strengthsWithout } from './strengthsWithout';
import { sumAt } from './fitStrengths';
import type { FittedSources } from './fitRemainder';
import type { Left } from '../krigedWithout';
import type { Place } from '../observations';
import type { Predictions } from '../leaveOneOut';
import type { StrengthDoubt } from './strengthDoubt';

/** A place tells of the strengths no more than this share of all that is known of them. */
const MOST = 0.99;

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
      variance: left.variance + unsure(left, open, doubt),
    };
  });
}

/** Variance that the doubt of the strengths adds without the place: its own part of the information is taken off again. */
function unsure({ variance }: Left, open: readonly number[], { covariance }: StrengthDoubt): number {
  const n = open.length;
  let sum = 0;
  for (let k = 0; k < n; k++) for (let l = 0; l < n; l++) sum += open[k] * covariance[k * n + l] * open[l];
  return sum / (1 - Math.min(MOST, sum / variance));
}
