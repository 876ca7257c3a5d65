import type { FittedSurvey } from '../engine/mapping/fitSurvey';
import type { SourceShare } from '../engine/mapping/sourceKriging/sourceShares';
import type { Home } from '../home/home';
import { fixedText } from './numbers';
import { nameOf } from './sources';

type FittedSources = NonNullable<FittedSurvey['sources']>;

/** '(0.1234 µT)²': a strength at 1 m, or the background. */
const squared = (strength: number): string => `(${fixedText(Math.sqrt(strength), 4)} µT)²`;

/** Source kriging in its formulas, one sentence a step: its terms with their exponents and strengths, how they are found, and what is kriged. */
export function sourceFormulaSentences(
  home: Home,
  { model, explain }: FittedSources,
  shares: readonly SourceShare[],
): string[] {
  const terms = model.terms.map((term) => {
    const byReadings = shares.find(({ id }) => id === term.id)?.fitted ? ' by the readings' : ' as given';
    return `${nameOf(home, term)}: n = ${term.exponent}${byReadings}, s = ${term.strength === 0 ? '0' : squared(term.strength)}`;
  });
  return [
    `What the marked sources explain: B̂² = b + Σ s · r^(−2n), r in metres in space from the nearest point of the mark, 0.3 at least, the mark at its level’s floor + its height; fields of unknown phase add as squares. The background b is ${squared(model.background)}. ${terms.join('; ')}.`,
    'Strengths: b and s are those, none below zero, of least Σ (ln B − ½ ln B̂²)² ÷ (0.05 + variance of ln B) over all places of all levels, with (½ ln(1 + s/(0.1 µT)²))² added for every point. An exponent to be found starts at 2 for a line and 3 for a point; another stands where it lessens N ln(Σ) of N places by more than 2, with what is added counted.',
    `Remainder: ln B − ½ ln B̂², one a reading. The variogram below is of the remainder; its nugget and sill together are not taken below the mean variance that the meter gives ln B.${explain ? ' The sources predict clearly better than kriging alone, so readings of every level count where it is asked whether one is near.' : ''}`,
  ];
}

/** How the estimate comes of the sources and the remainder, and what the doubt of the strengths adds to its variance. */
export const SOURCE_WEIGHING =
  'Estimate: ½ ln B̂² at the place plus ordinary kriging of the remainder from all readings of the level, K = C among the readings with nugget and meter variance on its diagonal; a level without readings takes the mean of all remainders. The strengths are in doubt as the coefficients of universal kriging are: with u_k what a change of ln s_k changes of ln B and o_k what kriging of u_k from the readings leaves of it at the place, the variance grows by o·Σ·o, Σ = (UᵀQU + P)⁻¹, Q the inverse of K with a free mean, level by level, P = 1/3² for a part with strength; a part without strength counts by how much of it the readings could not have told.';
