import { addFields, type Sites } from './kernel';
import { between } from './remainder';
import { negativeExponential } from '../negativeExponential';
import { ABREAST, abreast, solveLowerMany, startAbreast } from '../../algebra/solveLowerMany';
import type { Model } from './model';
import type { Ready } from './readySamples';

/** Points worked on at a time: what each sample adds to them stays in the nearest cache. */
const BLOCK = 256;

/** Some of the sites, and how like each reading the remainder is there: e^(−h/ρ) by ρ, readings × BLOCK. */
export interface Block {
  sites: Sites;
  first: number;
  count: number;
  correlations: Map<number, Float64Array>;
}

/** One block of sites after another. */
export function forEachBlock(
  { sites: readings, remainders }: Model,
  sites: Sites,
  visit: (block: Block) => void,
): void {
  const n = readings.xs.length;
  const rhos = [...new Set(remainders.map(({ rho }) => rho))];
  const correlations = new Map(rhos.map((rho) => [rho, new Float64Array(n * BLOCK)]));
  for (let first = 0; first < sites.xs.length; first += BLOCK) {
    const count = Math.min(BLOCK, sites.xs.length - first);
    for (const [rho, correlation] of correlations)
      for (let i = 0; i < n; i++)
        for (let p = 0; p < count; p++)
          correlation[i * BLOCK + p] = negativeExponential(between(readings, i, sites, first + p) / rho);
    visit({ sites, first, count, correlations });
  }
}

/** ln B of one sample at the sites of a block, into `values`; `field` has room for six numbers a site. */
export function sampleInBlock(
  { remainders }: Model,
  { elements, ambientSquare, offset, pulls, remainder }: Ready,
  { sites, first, count, correlations }: Block,
  field: Float64Array,
  values: Float64Array,
): void {
  field.fill(0);
  addFields(elements, sites, first, first + count, field);
  for (let p = 0, at = 0; p < count; p++, at += 6) {
    const a = field[at];
    const b = field[at + 1];
    const c = field[at + 2];
    const d = field[at + 3];
    const e = field[at + 4];
    const f = field[at + 5];
    values[p] = offset + 0.5 * Math.log(ambientSquare + a * a + b * b + c * c + d * d + e * e + f * f);
  }
  const correlation = correlations.get(remainders[remainder].rho)!;
  for (let i = 0; i < pulls.length; i++) {
    const pull = pulls[i];
    for (let p = 0, at = i * BLOCK; p < count; p++, at++) values[p] += pull * correlation[at];
  }
}

/** Room for one sample in one block. */
export const blockRoom = (): { field: Float64Array; values: Float64Array } => ({
  field: new Float64Array(6 * BLOCK),
  values: new Float64Array(BLOCK),
});

/** L⁻¹c of remainder g at the sites of a block, abreast. */
export function reducedInBlock(
  { remainders }: Model,
  g: number,
  { count, correlations }: Block,
): Float64Array {
  const { s, rho, cholesky } = remainders[g];
  const { n } = cholesky;
  const correlation = correlations.get(rho)!;
  const V = abreast(count, n);
  for (let q = 0; q < count; q++)
    for (let i = 0, at = startAbreast(q, n); i < n; i++, at += ABREAST)
      V[at] = s * s * (1 + correlation[i * BLOCK + q]);
  solveLowerMany(cholesky, V, 0);
  return V;
}
