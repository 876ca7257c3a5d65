import { choleskyWithJitter } from '../../src/engine/algebra/cholesky';
import { CORRELATION } from '../../src/engine/mapping/variogram';
import type { Random } from '../../src/engine/algebra/random';
import type { Variogram } from '../../src/engine/mapping/variogram';

/** One draw of a Gaussian field with this variogram and mean 0 at the given places. */
export function gaussianField(
  xs: readonly number[],
  ys: readonly number[],
  { model, nugget, sill, range }: Variogram,
  chance: Random,
): number[] {
  const n = xs.length;
  const K = Float64Array.from({ length: n * n }, (_, at) => {
    const [i, j] = [Math.floor(at / n), at % n];
    return (
      sill * CORRELATION[model](Math.hypot(xs[i] - xs[j], ys[i] - ys[j]) / range) + (i === j ? nugget : 0)
    );
  });
  const { lower } = choleskyWithJitter(K, n, sill + nugget)!;
  const normals = xs.map(() => chance.normal());
  return xs.map((_, i) => normals.reduce((sum, normal, k) => sum + lower[i * n + k] * normal, 0));
}
