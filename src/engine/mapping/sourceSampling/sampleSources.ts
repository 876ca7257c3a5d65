import { random, type Random } from '../../algebra/random';
import { Chain } from './chain';
import { modelOf } from './model';
import { MOST_LATENTS, type Slot } from './slots';
import type { Sample, SourceSamples } from './samples';
import type { SamplingQuestion } from './question';

/** Of the likelihood in the first sweep; 1 after this share of the burn (tempering as in Neal 2001). */
const FIRST_HEAT = 0.03;
const HEATED = 0.8;

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
 * samples to the bit. Null when cancelled; at least one place.
 */
export function sampleSources(
  question: SamplingQuestion,
  progress: (share: number) => void = () => {},
  cancelled: () => boolean = () => false,
): SourceSamples | null {
  const { seed, effort, start } = question;
  const model = modelOf(question);
  const chance = random(seed * 1009);
  const chains = Array.from({ length: effort.chains }, (_, c) => {
    const chain = new Chain(model, random(seed * 1009 + c + 1));
    if (start)
      take(chain, model.slots, start.samples[Math.floor(((c + 0.5) / effort.chains) * start.samples.length)]);
    return chain;
  });
  const samples: Sample[] = [];
  const perChain = Math.max(1, Math.round(effort.samples / effort.chains));
  const totals = chains.map(() => 0);
  const sweeps = effort.burn + effort.keep;
  for (let first = 0; first < sweeps; first += ROUND) {
    if (cancelled()) return null;
    progress(first / sweeps);
    const power = heat(first / effort.burn, start !== undefined);
    if (first > 0) resample(chains, power - heat((first - ROUND) / effort.burn, start !== undefined), chance);
    chains.forEach((chain, c) => {
      chain.rebuild();
      for (let sweep = first; sweep < Math.min(first + ROUND, sweeps); sweep++) {
        chain.sweep(power);
        if (sweep < effort.burn) continue;
        totals[c] += chain.logLikelihood / effort.keep;
        if (due(sweep) > due(sweep - 1)) samples.push(sampleOf(chain, model.slots));
      }
    });
  }
  function due(sweep: number): number {
    return Math.floor(((sweep - effort.burn + 1) * perChain) / effort.keep);
  }
  progress(1);
  return { samples: samples.map((s) => ({ ...s, weight: 1 / samples.length })), chains: totals };
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

/** A chain goes on from an earlier sample; sources whose slot is no more are left out. */
function take(chain: Chain, slots: readonly Slot[], sample: Sample): void {
  const before = new Map(sample.sources.map((source) => [source.slot, source.latents]));
  slots.forEach(({ key, latents: count }, j) => {
    const latents = before.get(key);
    chain.present[j] = latents ? 1 : 0;
    if (latents) for (let k = 0; k < count; k++) chain.latents[j * MOST_LATENTS + k] = latents[k];
  });
  chain.floor = sample.floor;
  chain.remainder = sample.remainder;
}

function sampleOf(chain: Chain, slots: readonly Slot[]): Sample {
  const sources = slots.flatMap(({ key, latents }, j) =>
    chain.present[j]
      ? [{ slot: key, latents: [...chain.latents.subarray(j * MOST_LATENTS, j * MOST_LATENTS + latents)] }]
      : [],
  );
  return { weight: 1, remainder: chain.remainder, floor: chain.floor, sources };
}
