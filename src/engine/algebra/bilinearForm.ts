/** Σᵢⱼ pᵢ·Xᵢⱼ·qⱼ for X row-major; two rows at a time, whose sums do not wait for each other. */
export function bilinearForm(p: Float64Array, X: Float64Array, q: Float64Array): number {
  const [m, n] = [p.length, q.length];
  let sum = 0;
  for (let i = 0; i + 1 < m; i += 2) {
    let one = 0;
    let next = 0;
    for (let j = 0, at = i * n; j < n; j++, at++) {
      one += X[at] * q[j];
      next += X[at + n] * q[j];
    }
    sum += p[i] * one + p[i + 1] * next;
  }
  if (m % 2 === 0) return sum;
  let last = 0;
  for (let j = 0, at = (m - 1) * n; j < n; j++, at++) last += X[at] * q[j];
  return sum + p[m - 1] * last;
}
