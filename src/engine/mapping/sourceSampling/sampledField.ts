import { readySamples, type Ready } from './readySamples';
import { modelOf } from './model';
import { between, remainderCovariance } from './remainder';
import { addFields, type Sites } from './kernel';
import { solveLowerMany, startInFours } from '../../algebra/solveLowerMany';
import { negativeExponential } from '../negativeExponential';
import type { Model } from './chain';
import type { Points } from '../covarianceMatrix';
import type { Predictor } from '../field';
import type { SamplingQuestion } from './question';
import type { SourceSamples } from './samples';

/** What one sample says of ln B at some points: normal, with this mean and covariance (row-major). */
export interface Draw {
  weight: number;
  mean: Float64Array;
  covariance: Float64Array;
}

export interface SampledField extends Predictor {
  /** Every sample by itself: what is not linear in ln B, as the mean field of a zone, is taken in each and then put together. */
  draws(points: Points): Draw[];
}

/** Points worked on at a time: what each sample adds to them stays in the nearest cache. */
const BLOCK = 256;

/**
 * The field as the samples of this question have it, in a plane at height z: of each sample the sources' field and the
 * kriged remainder. The mean of ln B is the weighted mean over samples; its variance that between samples and, within, the
 * remainder's kriging variance. Metres and ln µT.
 */
export function sampledField(question: SamplingQuestion, samples: SourceSamples, z: number): SampledField {
  const model = modelOf(question);
  const ready = readySamples(model, samples);
  const shares = sharesOfRemainders(model, ready);
  const both = (points: Points): { mean: Float64Array; variance: Float64Array } => {
    const { mean, spread } = overSamples(model, ready, sitesOf(points, z));
    const sites = sitesOf(points, z);
    shares.forEach((share, g) => {
      if (share > 0) addRemainderVariance(model, g, share, sites, spread);
    });
    return { mean, variance: spread };
  };
  return {
    mean: (points) => overSamples(model, ready, sitesOf(points, z)).mean,
    both,
    draws(points) {
      const sites = sitesOf(points, z);
      const m = sites.xs.length;
      const all = eachSample(model, ready, sites);
      const covariances = new Map<number, Float64Array>();
      return ready.map(({ weight, remainder }, s) => {
        const covariance = covariances.get(remainder) ?? new Float64Array(m * m);
        if (!covariances.has(remainder)) {
          addRemainderCovariance(model, remainder, 1, sites, sites, covariance);
          covariances.set(remainder, covariance);
        }
        return { weight, mean: all.subarray(s * m, (s + 1) * m), covariance };
      });
    },
    cross(a, b) {
      const [one, other] = [sitesOf(a, z), sitesOf(b, z)];
      const covariance = betweenSamples(
        ready,
        eachSample(model, ready, one),
        eachSample(model, ready, other),
      );
      shares.forEach((share, g) => {
        if (share > 0) addRemainderCovariance(model, g, share, one, other, covariance);
      });
      return covariance;
    },
  };
}

const sitesOf = ({ xs, ys }: Points, z: number): Sites => ({
  xs: Float64Array.from(xs),
  ys: Float64Array.from(ys),
  zs: new Float64Array(xs.length).fill(z),
});

function sharesOfRemainders({ remainders }: Model, ready: readonly Ready[]): Float64Array {
  const shares = new Float64Array(remainders.length);
  for (const { weight, remainder } of ready) shares[remainder] += weight;
  return shares;
}

/** Weighted mean of ln B over the samples, and its variance between them. */
function overSamples(
  model: Model,
  ready: readonly Ready[],
  sites: Sites,
): { mean: Float64Array; spread: Float64Array } {
  const m = sites.xs.length;
  const mean = new Float64Array(m);
  const spread = new Float64Array(m);
  forEachBlock(model, ready, sites, (first, count, values, { weight }, before) => {
    // West's running weighted variance (1979): no large squares are taken from each other.
    const share = weight / (before + weight);
    for (let p = 0; p < count; p++) {
      const off = values[p] - mean[first + p];
      mean[first + p] += share * off;
      spread[first + p] += weight * (1 - share) * off * off;
    }
  });
  return { mean, spread };
}

/** ln B of every sample at every site, samples × sites. */
function eachSample(model: Model, ready: readonly Ready[], sites: Sites): Float64Array {
  const m = sites.xs.length;
  const all = new Float64Array(ready.length * m);
  forEachBlock(model, ready, sites, (first, count, values, sample) => {
    all.set(values.subarray(0, count), ready.indexOf(sample) * m + first);
  });
  return all;
}

/** ln B of one sample after another over one block of sites after another; `before` is the weight of samples that went before. */
function forEachBlock(
  { sites: readings, remainders }: Model,
  ready: readonly Ready[],
  sites: Sites,
  visit: (first: number, count: number, values: Float64Array, sample: Ready, before: number) => void,
): void {
  const n = readings.xs.length;
  const rhos = [...new Set(remainders.map(({ rho }) => rho))];
  const correlations = rhos.map(() => new Float64Array(n * BLOCK));
  const field = new Float64Array(6 * BLOCK);
  const values = new Float64Array(BLOCK);
  for (let first = 0; first < sites.xs.length; first += BLOCK) {
    const count = Math.min(BLOCK, sites.xs.length - first);
    for (let i = 0; i < n; i++)
      for (let p = 0; p < count; p++) {
        const h = between(readings, i, sites, first + p);
        rhos.forEach((rho, k) => (correlations[k][i * BLOCK + p] = negativeExponential(h / rho)));
      }
    let before = 0;
    for (const sample of ready) {
      field.fill(0);
      addFields(sample.elements, sites, first, first + count, field);
      for (let p = 0, at = 0; p < count; p++, at += 6) {
        const a = field[at];
        const b = field[at + 1];
        const c = field[at + 2];
        const d = field[at + 3];
        const e = field[at + 4];
        const f = field[at + 5];
        values[p] =
          sample.offset +
          0.5 * Math.log(sample.ambientSquare + a * a + b * b + c * c + d * d + e * e + f * f);
      }
      const correlation = correlations[rhos.indexOf(remainders[sample.remainder].rho)];
      for (let i = 0; i < n; i++) {
        const pull = sample.pulls[i];
        for (let p = 0, at = i * BLOCK; p < count; p++, at++) values[p] += pull * correlation[at];
      }
      visit(first, count, values, sample, before);
      before += sample.weight;
    }
  }
}

function betweenSamples(ready: readonly Ready[], a: Float64Array, b: Float64Array): Float64Array {
  const [rows, columns] = [a.length / ready.length, b.length / ready.length];
  const covariance = new Float64Array(rows * columns);
  const centred = (values: Float64Array, m: number): Float64Array => {
    const mean = new Float64Array(m);
    ready.forEach(({ weight }, s) => mean.forEach((_, p) => (mean[p] += weight * values[s * m + p])));
    return values.map((value, at) => value - mean[at % m]);
  };
  const [one, other] = [centred(a, rows), centred(b, columns)];
  ready.forEach(({ weight }, s) => {
    for (let p = 0; p < rows; p++) {
      const off = weight * one[s * rows + p];
      for (let q = 0; q < columns; q++) covariance[p * columns + q] += off * other[s * columns + q];
    }
  });
  return covariance;
}

/** L⁻¹c of the sites from `first` on, `count` of them, side by side in fours. */
function reduced(
  { sites: readings, remainders }: Model,
  g: number,
  sites: Sites,
  first: number,
  count: number,
): Float64Array {
  const n = readings.xs.length;
  const V = new Float64Array(4 * n * Math.ceil(count / 4));
  for (let q = 0; q < count; q++)
    for (let i = 0, at = startInFours(q, n); i < n; i++, at += 4)
      V[at] = remainderCovariance(remainders[g], between(readings, i, sites, first + q));
  solveLowerMany(remainders[g].cholesky, V, 0);
  return V;
}

function addRemainderVariance(
  model: Model,
  g: number,
  share: number,
  sites: Sites,
  variance: Float64Array,
): void {
  const n = model.sites.xs.length;
  const all = 2 * model.remainders[g].s ** 2;
  for (let first = 0; first < variance.length; first += BLOCK) {
    const count = Math.min(BLOCK, variance.length - first);
    const V = reduced(model, g, sites, first, count);
    for (let q = 0; q < count; q++) {
      let known = 0;
      for (let i = 0, at = startInFours(q, n); i < n; i++, at += 4) known += V[at] * V[at];
      variance[first + q] += share * Math.max(0, all - known);
    }
  }
}

function addRemainderCovariance(
  model: Model,
  g: number,
  share: number,
  a: Sites,
  b: Sites,
  covariance: Float64Array,
): void {
  const n = model.sites.xs.length;
  const [rows, columns] = [a.xs.length, b.xs.length];
  const [one, other] = [reduced(model, g, a, 0, rows), reduced(model, g, b, 0, columns)];
  for (let p = 0; p < rows; p++)
    for (let q = 0; q < columns; q++) {
      let known = 0;
      for (let i = 0, at = startInFours(p, n), to = startInFours(q, n); i < n; i++, at += 4, to += 4)
        known += one[at] * other[to];
      covariance[p * columns + q] +=
        share * (remainderCovariance(model.remainders[g], between(a, p, b, q)) - known);
    }
}
