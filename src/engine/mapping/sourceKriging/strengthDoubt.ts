import { choleskyWithJitter, invert } from '../../algebra/cholesky';
import { columnsOf, strengthsOf } from './sourceModel';
import { krige } from '../kriging';
import { sumAt } from './fitStrengths';
import { spotsOf } from './sourceTerms';
import { trendInformation } from '../trend';
import type { Place } from '../observations';
import type { SourceModel } from './sourceModel';
import type { Spots } from './sourceTerms';
import type { Variogram } from '../variogram';

/** How unsure the strengths are, the background's first. Plain data. */
export interface StrengthDoubt {
  /** µT² at 1 m that a part of no strength may still have, one standard deviation; 0 for a part with strength. */
  hidden: readonly number[];
  /** Of ln strength, or of strength ÷ hidden where that counts; row-major. */
  covariance: Float64Array;
}

/** Standard deviation of ln strength before any reading: a factor of 140 either way at 90 %. The project's choice. */
const BEFORE = 3;

/**
 * Covariance of the strengths given the variogram of what they leave, as of the coefficients of universal kriging (Cressie
 * 1993, section 3.4) about the fitted trend: (UᵀQU + prior)⁻¹ with U what they change of ln B at the places, level by level,
 * and Q as in leaving out. A factor common to all strengths is no doubt of its own: the mean of ordinary kriging has it.
 */
export function strengthDoubt(
  model: SourceModel,
  places: readonly Place[],
  variogram: Variogram,
): StrengthDoubt {
  const spots = spotsOf(places, model.elevations);
  const slopes = slopesOf(model, spots);
  const told = information(slopes, places, variogram);
  const n = slopes.length;
  const hidden = strengthsOf(model).map((strength, k) =>
    // As if one place more had been read where the part is heard best: a source far off stays within bounds.
    strength > 0 ? 0 : 1 / Math.sqrt(told[k * n + k] + Math.max(...slopes[k]) ** 2),
  );
  const precision = information(changesOf(model, hidden, spots), places, variogram);
  for (let k = 0; k < n; k++) precision[k * n + k] += hidden[k] > 0 ? 1 : 1 / BEFORE ** 2;
  const cholesky = choleskyWithJitter(precision, n, 1);
  if (!cholesky) throw new Error('What the readings say of the strengths is not positive definite.');
  return { hidden, covariance: invert(cholesky) };
}

/**
 * What one standard deviation of each part changes of ln B at each spot: half its share of B² for a part with strength,
 * what would be heard of it for one without.
 */
export function changesOf(model: SourceModel, hidden: StrengthDoubt['hidden'], spots: Spots): Float64Array[] {
  const strengths = strengthsOf(model);
  return slopesOf(model, spots).map((slope, k) =>
    strengths[k] > 0 ? slope : slope.map((s) => 0.5 * Math.log(1 + 2 * hidden[k] * s)),
  );
}

/** ∂ ln B / ∂ ln strength of a part with strength; ∂ ln B / ∂ strength of one without. */
function slopesOf(model: SourceModel, spots: Spots): Float64Array[] {
  const strengths = strengthsOf(model);
  const columns = columnsOf(model.terms, spots);
  const sum = columns[0].map((_, i) => sumAt(columns, strengths, i));
  return columns.map((column, k) =>
    column.map((value, i) => (0.5 * value * (strengths[k] > 0 ? strengths[k] : 1)) / sum[i]),
  );
}

/** UᵀQU over all levels, each by itself. */
function information(
  U: readonly Float64Array[],
  places: readonly Place[],
  variogram: Variogram,
): Float64Array {
  const total = new Float64Array(U.length ** 2);
  for (const level of new Set(places.map((place) => place.level))) {
    const own = [...places.keys()].filter((i) => places[i].level === level);
    const kriging = krige(
      {
        xs: own.map((i) => places[i].x),
        ys: own.map((i) => places[i].y),
        values: own.map((i) => places[i].ln),
        noise: own.map((i) => places[i].variance),
      },
      variogram,
    );
    const told = trendInformation(
      kriging,
      U.map((u) => own.map((i) => u[i])),
    );
    told.forEach((value, at) => (total[at] += value));
  }
  return total;
}
