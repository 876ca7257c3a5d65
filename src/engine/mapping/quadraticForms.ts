/**
 * wᵀKw of each of the first `count` rows of W, n numbers a row, for a symmetric K, n × n, of which the lower half is read:
 * what i adds to the places before it. Four rows at a time, K once for all of them, for it may be larger than any cache.
 */
export function quadraticForms(K: Float64Array, n: number, W: Float64Array, count: number): Float64Array {
  const forms = new Float64Array(4 * Math.ceil(count / 4));
  // Past the last row the last stands in.
  const start = (p: number) => Math.min(p, count - 1) * n;
  for (let i = 0; i < n; i++)
    for (let p = 0; p < count; p += 4) {
      const [a, b, c, d] = [start(p), start(p + 1), start(p + 2), start(p + 3)];
      let [s0, s1, s2, s3] = [0, 0, 0, 0];
      for (let j = 0, at = i * n; j < i; j++, at++) {
        const covariance = K[at];
        s0 += covariance * W[a + j];
        s1 += covariance * W[b + j];
        s2 += covariance * W[c + j];
        s3 += covariance * W[d + j];
      }
      const own = K[i * n + i];
      forms[p] += W[a + i] * (own * W[a + i] + 2 * s0);
      forms[p + 1] += W[b + i] * (own * W[b + i] + 2 * s1);
      forms[p + 2] += W[c + i] * (own * W[c + i] + 2 * s2);
      forms[p + 3] += W[d + i] * (own * W[d + i] + 2 * s3);
    }
  return forms.subarray(0, count);
}
