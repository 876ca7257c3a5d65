import { choleskyWithJitter, type Cholesky } from '../../algebra/cholesky';
import { negativeExponential } from '../negativeExponential';
import type { Sites } from './kernel';

/** What physics leaves of ln B: a Gaussian process of covariance s²(1 + e^(−h/ρ)), h in three dimensions, metres. */
export interface RemainderKind {
  s: number;
  rho: number;
}

/**
 * From nearly nothing, where the sources explain the readings, to what kriging finds in whole homes. The project's choice:
 * where s is large the model has become kriging, which is what protects a map against sources that are not.
 */
export const REMAINDERS: readonly RemainderKind[] = [0.005, 0.02, 0.05, 0.1, 0.2, 0.4, 0.8].flatMap((s) =>
  [1, 3].map((rho) => ({ s, rho })),
);

/** A remainder at the readings, factored once: K = s²(1 + e^(−h/ρ)) + the meters' variance. */
export interface Remainder extends RemainderKind {
  cholesky: Cholesky;
  /** L⁻¹, its rows one after the other without what is above the diagonal. */
  inverse: Float64Array;
  /** −½ ln det K. */
  constant: number;
}

export const remainderCovariance = ({ s, rho }: RemainderKind, h: number): number =>
  s * s * (1 + negativeExponential(h / rho));

export function remaindersAt(
  sites: Sites,
  variances: ArrayLike<number>,
  kinds: readonly RemainderKind[],
): Remainder[] {
  const n = sites.xs.length;
  return kinds.map((kind) => {
    const K = new Float64Array(n * n);
    for (let i = 0; i < n; i++)
      for (let j = 0; j <= i; j++)
        K[i * n + j] = remainderCovariance(kind, between(sites, i, sites, j)) + (i === j ? variances[i] : 0);
    const cholesky = choleskyWithJitter(K, n, 2 * kind.s * kind.s);
    if (!cholesky) throw new Error('The covariance of the remainder is not positive definite.');
    return { ...kind, cholesky, inverse: packedInverse(cholesky), constant: halfLogDet(cholesky) };
  });
}

export const between = (a: Sites, i: number, b: Sites, j: number): number => {
  const x = a.xs[i] - b.xs[j];
  const y = a.ys[i] - b.ys[j];
  const z = a.zs[i] - b.zs[j];
  return Math.sqrt(x * x + y * y + z * z);
};

function packedInverse({ n, lower }: Cholesky): Float64Array {
  const packed = new Float64Array((n * (n + 1)) / 2);
  const at = (i: number, j: number) => (i * (i + 1)) / 2 + j;
  for (let j = 0; j < n; j++) {
    packed[at(j, j)] = 1 / lower[j * n + j];
    for (let i = j + 1; i < n; i++) {
      let sum = 0;
      for (let k = j; k < i; k++) sum -= lower[i * n + k] * packed[at(k, j)];
      packed[at(i, j)] = sum / lower[i * n + i];
    }
  }
  return packed;
}

function halfLogDet({ n, lower }: Cholesky): number {
  let sum = 0;
  for (let i = 0; i < n; i++) sum -= Math.log(lower[i * n + i]);
  return sum;
}

/** ln of the density of these residuals, without the constant of 2π. */
export function logDensity({ inverse, constant }: Remainder, residuals: Float64Array): number {
  let squares = 0;
  const n = residuals.length;
  for (let i = 0, at = 0; i < n; i++) {
    let sum = 0;
    for (let k = 0; k <= i; k++, at++) sum += inverse[at] * residuals[k];
    squares += sum * sum;
  }
  return constant - 0.5 * squares;
}
