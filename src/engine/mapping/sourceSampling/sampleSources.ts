import { random, type Random } from '../../algebra/random';
import { Chain } from './chain';
import { modelOf } from './model';
import { reweighted, spread } from './reweighted';
import type { Sample, SourceSamples } from './samples';
import type { SamplingQuestion } from './question';

/** Of the likelihood in the first sweep; 1 after this share of the burn (tempering as in Neal 2001). */
const FIRST_HEAT = 0.03;
const HEATED = 0.8;

/**
 * Earlier samples serve again by new weights alone while they count as this share of their number, so that one edited
 * reading moves the map by what it says and not by chance; chains go on from them, with so many times fewer sweeps before,
 * while at least this number of them still counts. The project's choice.
 */
const ENOUGH = 0.5;
const LEAST = 3;
const SHORTER = 6;

/** Sweeps between which chains are compared, sums rebuilt, and a caller is told and may cancel. */
const ROUND = 50;

/**
 * Which sources would make these readings: samples of the posterior of
 *
 *     B(r) = Σⱼ Fⱼ(r; ξⱼ), a complex 3-vector,   ln v = ½ ln(f² + |Re B|² + |Im B|²) + δ + noise,
 *
 * with sources each present or not and δ a Gaussian process, by Markov chains without gradients. While the likelihood's
 * power rises, chains that fit worse give way to copies of those that fit better, each in proportion to what the rise makes
 * of its likelihood (a sequential Monte Carlo sampler: Del Moral, Doucet & Jasra 2006). The same question gives the same
 * samples to the bit. Earlier samples are a start as in such a sampler, too: they are weighed by the new readings first. Null when cancelled; at least one place.
 */
export function sampleSources(
  question: SamplingQuestion,
  progress: (share: number) => void = () => {},
  cancelled: () => boolean = () => false,
): SourceSamples | null {
  const { seed, effort } = question;
  const model = modelOf(question);
  const slots = model.slots.map(({ key }) => key);
  const earlier = question.start ? reweighted(model, question.start) : null;
  if (earlier && earlier.effective >= ENOUGH) {
    progress(1);
    return { samples: earlier.samples, slots };
  }
  const start = earlier && earlier.effective * earlier.samples.length >= LEAST ? earlier.samples : null;
  const burn = start ? Math.ceil(effort.burn / SHORTER) : effort.burn;
  const chance = random(seed * 1009);
  const chains = Array.from(
    { length: effort.chains },
    (_, c) => new Chain(model, random(seed * 1009 + c + 1)),
  );
  if (start) spread(start, chains.length).forEach((sample, c) => chains[c].goOnFrom(sample));
  const samples: Sample[] = [];
  const perChain = Math.max(1, Math.round(effort.samples / effort.chains));
  const sweeps = burn + effort.keep;
  for (let first = 0; first < sweeps; first += ROUND) {
    if (cancelled()) return null;
    progress(first / sweeps);
    const power = heat(first / burn, start !== null);
    if (first > 0) resample(chains, power - heat((first - ROUND) / burn, start !== null), chance);
    for (const chain of chains) {
      chain.rebuild();
      for (let sweep = first; sweep < Math.min(first + ROUND, sweeps); sweep++) {
        chain.sweep(power);
        if (sweep >= burn && due(sweep) > due(sweep - 1)) samples.push(chain.sample());
      }
    }
  }
  function due(sweep: number): number {
    return Math.floor(((sweep - burn + 1) * perChain) / effort.keep);
  }
  progress(1);
  return { samples: samples.map((s) => ({ ...s, weight: 1 / samples.length })), slots };
}

/** Chains in proportion to e^(rise · log-likelihood), the fewest moves that do it (systematic resampling). */
function resample(chains: readonly Chain[], rise: number, chance: Random): void {
  if (!(rise > 0)) return;
  const best = Math.max(...chains.map(({ logLikelihood }) => logLikelihood));
  const shares = chains.map(({ logLikelihood }) => Math.exp(rise * (logLikelihood - best)));
  const total = shares.reduce((sum, share) => sum + share, 0);
  const counts = chains.map(() => 0);
  let at = chance.next();
  let sum = 0;
  shares.forEach((share, c) => {
    // The last takes what rounding leaves, so that as many are drawn as there are.
    sum = c === chains.length - 1 ? chains.length : sum + (share / total) * chains.length;
    while (at < sum) {
      counts[c]++;
      at++;
    }
  });
  let from = 0;
  chains.forEach((chain, c) => {
    if (counts[c] > 0) return;
    while (counts[from] < 2) from++;
    counts[from]--;
    chain.copy(chains[from]);
  });
}

/** The likelihood's power by the share of the burn that is done; from earlier samples there is nothing to melt. */
function heat(burnt: number, warm: boolean): number {
  return warm || burnt >= HEATED ? 1 : FIRST_HEAT ** (1 - burnt / HEATED);
}
