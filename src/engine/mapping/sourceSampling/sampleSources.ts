import { random } from '../../algebra/random';
import { Chain } from './chain';
import { modelOf } from './model';
import { MOST_LATENTS, type Slot } from './slots';
import type { Sample, SourceSamples } from './samples';
import type { SamplingQuestion } from './question';

/** Of the likelihood in the first sweep; 1 after this share of the burn (tempering as in Neal 2001). */
const FIRST_HEAT = 0.03;
const HEATED = 0.8;

/** Sums are rebuilt, and a caller is told and may cancel, after so many sweeps. */
const ROUND = 200;

/** Chains count by e^(a quarter of what their mean log-likelihood falls short of the best): the project's choice, for a chain
 * that is stuck off the best fits should not count as one that found them, nor the best alone. */
const CHAIN_POWER = 0.25;

/**
 * Which sources would make these readings: samples of the posterior of
 *
 *     B(r) = Σⱼ Fⱼ(r; ξⱼ), a complex 3-vector,   ln v = ½ ln(f² + |Re B|² + |Im B|²) + δ + noise,
 *
 * with sources each present or not and δ a Gaussian process, by Markov chains without gradients. The same question gives the
 * same samples to the bit. Null when cancelled; at least one place.
 */
export function sampleSources(
  question: SamplingQuestion,
  progress: (share: number) => void = () => {},
  cancelled: () => boolean = () => false,
): SourceSamples | null {
  const { seed, effort, start } = question;
  const model = modelOf(question);
  const perChain = Math.max(1, Math.round(effort.samples / effort.chains));
  const sweeps = effort.burn + effort.keep;
  const runs: { samples: Sample[]; logLikelihood: number }[] = [];
  for (let c = 0; c < effort.chains; c++) {
    const chain = new Chain(model, random(seed * 1009 + c));
    if (start)
      take(chain, model.slots, start.samples[Math.floor(((c + 0.5) / effort.chains) * start.samples.length)]);
    const samples: Sample[] = [];
    let total = 0;
    for (let sweep = 0; sweep < sweeps; sweep++) {
      if (sweep % ROUND === 0) {
        if (cancelled()) return null;
        progress((c + sweep / sweeps) / effort.chains);
        chain.rebuild();
      }
      chain.sweep(heat(sweep / effort.burn, start !== undefined));
      if (sweep < effort.burn) continue;
      total += chain.logLikelihood;
      const kept = sweep - effort.burn + 1;
      if (samples.length < Math.floor((kept * perChain) / effort.keep))
        samples.push(sampleOf(chain, model.slots));
    }
    runs.push({ samples, logLikelihood: total / effort.keep });
  }
  progress(1);
  return weighted(runs);
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

function weighted(runs: readonly { samples: Sample[]; logLikelihood: number }[]): SourceSamples {
  const best = Math.max(...runs.map(({ logLikelihood }) => logLikelihood));
  const share = (logLikelihood: number) => Math.exp(CHAIN_POWER * (logLikelihood - best));
  const total = runs.reduce((sum, run) => sum + share(run.logLikelihood) * run.samples.length, 0);
  return {
    samples: runs.flatMap(({ samples, logLikelihood }) =>
      samples.map((sample) => ({ ...sample, weight: share(logLikelihood) / total })),
    ),
    chains: runs.map(({ logLikelihood }) => logLikelihood),
  };
}
