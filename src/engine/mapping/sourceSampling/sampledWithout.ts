import { choleskyWithJitter, invert, solve } from '../../algebra/cholesky';
import { modelOf, type Model } from './model';
import { paretoSmoothed } from './paretoSmoothed';
import { readySamples, type Ready } from './readySamples';
import { sampledField } from './sampledField';
import { sampleSources } from './sampleSources';
import type { Effort, SampledPlace, SamplingQuestion } from './question';
import type { Prediction, Predictions } from '../leaveOneOut';
import type { Sample, SourceSamples } from './samples';

/** Above this the weights of the samples at hand do not stand for those without a place (Vehtari et al. 2024). */
const LARGEST_K = 0.7;

/** Readings this close in plan are left out together, whatever their heights. */
const SAME = 1e-3;

/** Sweeps without a place, from the samples that are likeliest without it. */
const WITHOUT: Effort = { chains: 10, burn: 40, keep: 40, samples: 40 };

/**
 * Each place predicted by source sampling without it. In one sample the remainder is Gaussian, and what it leaves of the
 * places J of one point of the plan is Λ_JJ⁻¹(Λe)_J, Λ = K⁻¹, of covariance Λ_JJ⁻¹; over the samples, each counts as
 * 1 ÷ the density it gives the place (Gelfand, Dey & Chang 1992), smoothed (Vehtari, Gelman & Gabry 2017). Where that does
 * not hold, a short run of chains goes on without the place. Null for a place whose level has no other.
 */
export function sampledWithout(question: SamplingQuestion, samples: SourceSamples): Predictions {
  const model = modelOf(question);
  const ready = readySamples(model, samples);
  const precisions = new Map<number, Float64Array>();
  for (const { remainder } of ready)
    if (!precisions.has(remainder)) precisions.set(remainder, invert(model.remainders[remainder].cholesky));
  const { places } = question;
  return places.map((place, i) => {
    const group = samePoint(places, i);
    if (places.every(({ level }, j) => level !== place.level || group.includes(j))) return null;
    const left = ready.map((sample) => leftIn(model, sample, precisions.get(sample.remainder)!, group, i));
    const { weights, k } = paretoSmoothed(
      left.map(({ logDensity }, t) => Math.log(ready[t].weight) - logDensity),
    );
    if (!(k <= LARGEST_K)) return sampledAnew(question, samples, group, i, weights);
    const predicted = place.ln - left.reduce((sum, { residual }, t) => sum + weights[t] * residual, 0);
    const variance = left.reduce(
      (sum, { residual, variance }, t) =>
        sum + weights[t] * (variance + (place.ln - residual - predicted) ** 2),
      0,
    );
    return { predicted, variance };
  });
}

function samePoint(places: readonly SampledPlace[], i: number): number[] {
  const { x, y, level } = places[i];
  return places.flatMap((place, j) =>
    place.level === level && Math.hypot(place.x - x, place.y - y) < SAME ? [j] : [],
  );
}

/** What a sample without the group leaves of place i, its variance, and ln of the density it gives the group. */
interface Left {
  residual: number;
  variance: number;
  logDensity: number;
}

function leftIn(
  { remainders, sites }: Model,
  { remainder, pulls }: Ready,
  precision: Float64Array,
  group: readonly number[],
  i: number,
): Left {
  const n = sites.xs.length;
  const size = group.length;
  const { s } = remainders[remainder];
  const block = choleskyWithJitter(
    Float64Array.from(group.flatMap((j) => group.map((k) => precision[j * n + k]))),
    size,
    0,
  )!;
  const dual = group.map((j) => pulls[j] / (s * s));
  const residuals = solve(block, dual);
  const own = group.indexOf(i);
  const unit = group.map((j) => Number(j === i));
  return {
    residual: residuals[own],
    variance: solve(block, unit)[own],
    logDensity: group.reduce(
      (sum, _, a) => sum + Math.log(block.lower[a * size + a]) - 0.5 * dual[a] * residuals[a],
      0,
    ),
  };
}

function sampledAnew(
  question: SamplingQuestion,
  { chains, samples }: SourceSamples,
  group: readonly number[],
  i: number,
  weights: Float64Array,
): Prediction {
  const { x, y, z, variance } = question.places[i];
  const without = {
    ...question,
    places: question.places.filter((_, j) => !group.includes(j)),
    effort: WITHOUT,
    start: { chains, samples: likeliest(samples, weights, WITHOUT.chains) },
  };
  const field = sampledField(without, sampleSources(without)!, z);
  const at = field.both({ xs: [x], ys: [y] });
  return { predicted: at.mean[0], variance: at.variance[0] + variance };
}

/** As many of the samples, each about as often as its weight says. */
function likeliest(samples: readonly Sample[], weights: Float64Array, count: number): Sample[] {
  let t = 0;
  let sum = weights[0];
  return Array.from({ length: count }, (_, c) => {
    while (sum < (c + 0.5) / count && t < samples.length - 1) sum += weights[++t];
    return samples[t];
  });
}
