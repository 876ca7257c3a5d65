import { Chain } from './chain';
import { random } from '../../algebra/random';
import type { Model } from './model';
import type { Sample, SourceSamples } from './samples';

/**
 * Samples of earlier readings as samples of these: each weighed by what the new readings make of its likelihood. `effective`:
 * the share of them that still counts, (Σw)² ÷ (number · Σw²) (Kong, Liu & Wong 1994). Null where there are other sources to
 * be thought of now.
 */
export function reweighted(
  model: Model,
  { samples, slots }: SourceSamples,
): { samples: Sample[]; effective: number } | null {
  if (slots.length !== model.slots.length || model.slots.some(({ key }, j) => key !== slots[j])) return null;
  const chain = new Chain(model, random(1));
  const logs = samples.map((sample) => {
    chain.goOnFrom(sample);
    return chain.logLikelihood;
  });
  const rises = samples.map(({ logLikelihood }, t) => logs[t] - logLikelihood);
  const most = Math.max(...rises);
  const weights = samples.map(({ weight }, t) => weight * Math.exp(rises[t] - most));
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  const squares = weights.reduce((sum, weight) => sum + weight * weight, 0);
  return {
    samples: samples.map((sample, t) => ({
      ...sample,
      weight: weights[t] / total,
      logLikelihood: logs[t],
    })),
    effective: (total * total) / (squares * samples.length),
  };
}

/** So many of the samples, each about as often as its weight says. */
export function spread(samples: readonly Sample[], count: number): Sample[] {
  let t = 0;
  let sum = samples[0].weight;
  return Array.from({ length: count }, (_, c) => {
    while (sum < (c + 0.5) / count && t < samples.length - 1) sum += samples[++t].weight;
    return samples[t];
  });
}
