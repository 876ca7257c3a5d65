import { changedWriter, type ChangedMarks } from './changedMarks';
import { blockRoom, forEachBlock, reducedInBlock, sampleInBlock, type Block } from './blocks';
import { readySamples, type Ready } from './readySamples';
import { modelOf, type Model } from './model';
import { between, remainderCovariance } from './remainder';
import {
  ABREAST,
  abreast,
  productsAbreast,
  solveLowerMany,
  startAbreast,
} from '../../algebra/solveLowerMany';
import type { Sites } from './kernel';
import type { Points } from '../covarianceMatrix';
import type { Draw, Predictor } from '../field';
import type { SamplingQuestion } from './question';
import type { SourceSamples } from './samples';

export interface SampledField extends Predictor {
  /** Every sample by itself: what is not linear in ln B, as the mean field of a zone, is taken in each and then put together. */
  draws(points: Points, others?: Points): Draw[];
}

/**
 * The field as the samples of this question have it, in a plane at height z: of each sample the sources' field and the
 * kriged remainder. The mean of ln B is the weighted mean over samples; its variance that between samples and, within, the
 * remainder's kriging variance. Metres and ln µT. With marks changed it is the field as it would be then: the remainder stays as
 * the readings have it.
 */
export function sampledField(
  question: SamplingQuestion,
  samples: SourceSamples,
  z: number,
  changed?: ChangedMarks,
): SampledField {
  const model = modelOf(question);
  const ready = readySamples(model, samples, changed && changedWriter(question, changed));
  const shares = sharesOfRemainders(model, ready);
  return {
    mean: (points) => overSamples(model, ready, sitesOf(points, z), null).mean,
    both: (points) => overSamples(model, ready, sitesOf(points, z), shares),
    draws(points, others = points) {
      const sites = sitesOf(points, z);
      const columns = others === points ? sites : sitesOf(others, z);
      const m = sites.xs.length;
      const all = eachSample(model, ready, sites);
      const covariances = new Map<number, Float64Array>();
      return ready.map(({ weight, remainder }, s) => {
        const covariance = covariances.get(remainder) ?? new Float64Array(m * columns.xs.length);
        if (!covariances.has(remainder)) {
          addRemainderCovariance(model, remainder, 1, sites, columns, covariance);
          covariances.set(remainder, covariance);
        }
        return { weight, mean: all.subarray(s * m, (s + 1) * m), covariance };
      });
    },
    cross(a, b) {
      const one = sitesOf(a, z);
      const other = a === b ? one : sitesOf(b, z);
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

/** Weighted mean of ln B over the samples, and where asked for its variance: between them, and the remainder's within. */
function overSamples(
  model: Model,
  ready: readonly Ready[],
  sites: Sites,
  shares: Float64Array | null,
): { mean: Float64Array; variance: Float64Array } {
  const mean = new Float64Array(sites.xs.length);
  const variance = new Float64Array(sites.xs.length);
  const { field, values } = blockRoom();
  forEachBlock(model, sites, (block) => {
    const { first, count } = block;
    let before = 0;
    for (const sample of ready) {
      sampleInBlock(model, sample, block, field, values);
      // West's running weighted variance (1979): no large squares are taken from each other.
      const { weight } = sample;
      const share = weight / (before + weight);
      before += weight;
      for (let p = 0; p < count; p++) {
        const off = values[p] - mean[first + p];
        mean[first + p] += share * off;
        variance[first + p] += weight * (1 - share) * off * off;
      }
    }
    shares?.forEach((share, g) => {
      if (share > 0) addRemainderVariance(model, g, share, block, variance);
    });
  });
  return { mean, variance };
}

function addRemainderVariance(
  model: Model,
  g: number,
  share: number,
  block: Block,
  variance: Float64Array,
): void {
  const { s, cholesky } = model.remainders[g];
  const V = reducedInBlock(model, g, block);
  for (let q = 0; q < block.count; q++) {
    let known = 0;
    for (let i = 0, at = startAbreast(q, cholesky.n); i < cholesky.n; i++, at += ABREAST)
      known += V[at] * V[at];
    variance[block.first + q] += share * Math.max(0, 2 * s * s - known);
  }
}

/** ln B of every sample at every site, samples × sites. */
function eachSample(model: Model, ready: readonly Ready[], sites: Sites): Float64Array {
  const m = sites.xs.length;
  const all = new Float64Array(ready.length * m);
  const { field, values } = blockRoom();
  forEachBlock(model, sites, (block) =>
    ready.forEach((sample, s) => {
      sampleInBlock(model, sample, block, field, values);
      all.set(values.subarray(0, block.count), s * m + block.first);
    }),
  );
  return all;
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

/** L⁻¹c of all sites, abreast. */
function reduced({ sites: readings, remainders }: Model, g: number, sites: Sites): Float64Array {
  const n = readings.xs.length;
  const V = abreast(sites.xs.length, n);
  for (let q = 0; q < sites.xs.length; q++)
    for (let i = 0, at = startAbreast(q, n); i < n; i++, at += ABREAST)
      V[at] = remainderCovariance(remainders[g], between(readings, i, sites, q));
  solveLowerMany(remainders[g].cholesky, V, 0);
  return V;
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
  const one = reduced(model, g, a);
  const other = a === b ? one : reduced(model, g, b);
  const known = new Float64Array(ABREAST);
  for (let p = 0; p < rows; p++) {
    // Among the same points one half is enough: the other is its mirror.
    const end = a === b ? p + 1 : columns;
    for (let q = 0; q < end; q += ABREAST) {
      productsAbreast(one, p, other, q, n, known);
      for (let k = 0; k < ABREAST && q + k < end; k++) {
        const value = share * (remainderCovariance(model.remainders[g], between(a, p, b, q + k)) - known[k]);
        covariance[p * columns + q + k] += value;
        if (a === b && q + k < p) covariance[(q + k) * columns + p] += value;
      }
    }
  }
}
