import type { FittedSurvey } from '../engine/mapping/fitSurvey';
import { SAMPLED_REACH } from '../engine/mapping/support';
import { countText } from './numbers';

type Sampled = NonNullable<FittedSurvey['sampled']>;

/** Source sampling in its formulas, one sentence a step: the model, what sources there may be, how they are drawn, what is kriged. */
export function samplingFormulaSentences({ question, samples }: Sampled): string[] {
  const { walls, marked, seed, effort } = question;
  return [
    `Sources: ln B = ½ ln(f² + |Re F|² + |Im F|²) + δ, F the sum of the fields of the sources that are there, a complex vector (Biot–Savart for straight wires, point dipoles for appliances), f an ambient floor (log-normal about 0.02 µT), δ a Gaussian remainder of covariance s²(1 + exp(−h/ρ)), h in metres in space, s one of 0.005, 0.02, 0.05, 0.1, 0.2, 0.4 and 0.8, ρ 1 or 3 m.`,
    `Before any reading there may be: ${marked.length > 0 ? `${countText(marked.length, 'marked source')}, each likely; ` : ''}a net current along each of ${countText(walls.length, 'stretch', 'stretches')} of wall, about two and a half in all; two free wires, a rising one, three hidden appliances and a street line, each unlikely. Currents and moments are log-normal, places about the mark, the wall or anywhere.`,
    `Sampling: ${effort.chains} Markov chains of ${effort.burn} sweeps with the likelihood’s power rising to one, then ${effort.keep} of which ${samples.samples.length} samples are kept; random seed ${seed}. The program with this file and this seed gives the same samples to the bit; another seed moves a map without marks by about a fifth, root mean square.`,
    'Estimate: in each sample ½ ln of what its sources give, plus simple kriging of δ from all readings of all levels with the meter’s variance on the diagonal; then the weighted mean of ln B over the samples. Its variance is that between the samples plus the mean kriging variance of δ.',
  ];
}

/** Where a sampled map is not drawn. */
export const SAMPLED_REACH_TEXT = `${SAMPLED_REACH} m indoors`;
