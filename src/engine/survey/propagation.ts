/** Several quantities and the covariance of their errors, row-major. */
export interface Estimates {
  values: number[];
  covariance: number[][];
}

/** Means of quantities observed together, and the covariance of the means (JCGM 100:2008, 5.2.3). */
export function meansOf(observations: readonly (readonly number[])[]): Estimates {
  const n = observations.length;
  const values = observations[0].map((_, k) => observations.reduce((sum, row) => sum + row[k], 0) / n);
  const covariance = values.map((a, k) =>
    values.map(
      (b, l) => observations.reduce((sum, row) => sum + (row[k] - a) * (row[l] - b), 0) / (n * (n - 1)),
    ),
  );
  return { values, covariance };
}

/** Step of a central difference, in standard uncertainties: small against the curve of the model, large against rounding. */
const STEP = 1e-3;

/** What a model makes of correlated inputs, to first order: JCJᵀ, J by central differences (JCGM 100:2008, H.2.3). */
export function propagated(
  model: (inputs: readonly number[]) => readonly number[],
  inputs: Estimates,
): Estimates {
  const { values, covariance } = inputs;
  const columns = values.map((_, k) => {
    const step = STEP * Math.sqrt(covariance[k][k]);
    if (step === 0) return model(values).map(() => 0);
    const at = (shift: number) => model(values.map((value, l) => (k === l ? value + shift : value)));
    const [up, down] = [at(step), at(-step)];
    return up.map((value, i) => (value - down[i]) / (2 * step));
  });
  const outputs = [...model(values)];
  return {
    values: outputs,
    covariance: outputs.map((_, i) =>
      outputs.map((__, j) =>
        covariance.reduce(
          (sum, row, k) => sum + row.reduce((part, c, l) => part + columns[k][i] * c * columns[l][j], 0),
          0,
        ),
      ),
    ),
  };
}
