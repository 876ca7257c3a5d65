/** A = L·Lᵀ of a symmetric positive definite matrix, n × n, row-major. */
export interface Cholesky {
  n: number;
  /** L; entries above the diagonal are 0. */
  lower: Float64Array;
  /** What was added to the diagonal of A. */
  jitter: number;
}

const LADDER = [0, 1e-12, 1e-11, 1e-10, 1e-9, 1e-8, 1e-7, 1e-6];

/**
 * Factor A (n × n, row-major, its lower triangle is read) adding the least of 0, 1e-12 … 1e-6 × scale to the diagonal
 * that makes it positive definite; null where none does. Scale is the size of A's diagonal (a sill).
 */
export function choleskyWithJitter(A: Float64Array, n: number, scale: number): Cholesky | null {
  for (const step of LADDER) {
    const jitter = step * scale;
    const lower = factor(A, n, jitter);
    if (lower) return { n, lower, jitter };
  }
  return null;
}

/** Rows that share one pass over the rows before them, which may be more than any cache holds; an even number. */
const BLOCK = 32;

function factor(A: Float64Array, n: number, jitter: number): Float64Array | null {
  const L = new Float64Array(n * n);
  for (let first = 0; first < n; first += BLOCK) {
    const end = Math.min(first + BLOCK, n);
    eliminate(A, L, n, first, end);
    for (let i = first; i < end; i++)
      for (let j = first; j <= i; j++) {
        let sum = A[i * n + j];
        for (let k = 0; k < j; k++) sum -= L[i * n + k] * L[j * n + k];
        if (j < i) {
          L[i * n + j] = sum / L[j * n + j];
          continue;
        }
        const pivot = sum + jitter;
        // What is left of a diagonal after rounding is noise below this, and a factor built on it too.
        if (!(pivot > 1e-14 * A[i * n + i])) return null;
        L[i * n + i] = Math.sqrt(pivot);
      }
  }
  return L;
}

/** The columns before `first` of the rows from there to `end`: two rows by two columns at a time, fetched once for four. */
function eliminate(A: Float64Array, L: Float64Array, n: number, first: number, end: number): void {
  for (let j = 0; j < first; j += 2)
    for (let i = first; i < end; i += 2) {
      const [a, b] = [i * n, Math.min(i + 1, end - 1) * n];
      const [c, d] = [j * n, (j + 1) * n];
      let [ac, ad, bc, bd] = [A[a + j], A[a + j + 1], A[b + j], A[b + j + 1]];
      for (let k = 0; k < j; k++) {
        const la = L[a + k];
        const lb = L[b + k];
        const lc = L[c + k];
        const ld = L[d + k];
        ac -= la * lc;
        ad -= la * ld;
        bc -= lb * lc;
        bd -= lb * ld;
      }
      L[a + j] = ac /= L[c + j];
      L[b + j] = bc /= L[c + j];
      L[a + j + 1] = (ad - ac * L[d + j]) / L[d + j + 1];
      L[b + j + 1] = (bd - bc * L[d + j]) / L[d + j + 1];
    }
}

/** y of L·y = b. */
export function solveLower({ n, lower }: Cholesky, b: ArrayLike<number>): Float64Array {
  const y = new Float64Array(n);
  for (let i = 0; i < n; i++) {
    let sum = b[i];
    for (let k = 0; k < i; k++) sum -= lower[i * n + k] * y[k];
    y[i] = sum / lower[i * n + i];
  }
  return y;
}

/** x of A·x = b. */
export function solve(cholesky: Cholesky, b: ArrayLike<number>): Float64Array {
  const { n, lower } = cholesky;
  const x = solveLower(cholesky, b);
  for (let i = n - 1; i >= 0; i--) {
    let sum = x[i];
    for (let k = i + 1; k < n; k++) sum -= lower[k * n + i] * x[k];
    x[i] = sum / lower[i * n + i];
  }
  return x;
}
