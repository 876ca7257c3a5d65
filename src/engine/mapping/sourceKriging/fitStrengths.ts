import { nonNegative } from '../../algebra/nonNegative';

/** What is known at places: ln B, and the weight of each, as one over a variance; and before any place is read. */
export interface Known {
  ln: ArrayLike<number>;
  weights: ArrayLike<number>;
  /** Strength of each part above which it is the less likely the stronger it is; Infinity where any is as likely. */
  usual: readonly number[];
}

/** Of ln B, as a strength over the usual one counts: about what surveys of appliances differ by. */
const UNUSUAL_SD = 1;

const ROUNDS = 60;

/** Sums of squares closer than this share are one: the answer does not move any more. */
const STILL = 1e-13;

/**
 * Strengths β ≥ 0 of least Σ w (ln B − ½ ln Σ β·column)²: errors of a field are factors, so its logarithm is fitted. Each
 * round is a non-negative least squares about the last answer (Gauss–Newton: rows column/B̂², wanted 1 + ln(B²/B̂²)), which
 * is to weigh by 1/B̂⁴ and start again; a step that makes it worse is halved. `columns[k][i]` is column k at place i; places
 * for which `skip` holds do not count; `start` is an answer to go on from.
 */
export function fitStrengths(
  columns: readonly Float64Array[],
  known: Known,
  {
    skip,
    start,
    rounds = ROUNDS,
  }: { skip?: ReadonlySet<number>; start?: Float64Array; rounds?: number } = {},
): Float64Array {
  const { ln, weights, usual } = known;
  const k = columns.length;
  const places = all(ln).filter((i) => !skip?.has(i));
  const misfit = (strengths: Float64Array) =>
    misfitOf(columns, known, strengths, places) + unusualOf(known, strengths);
  const step = (
    scale: (i: number) => number,
    wanted: (i: number) => number,
    from: ArrayLike<number> = new Float64Array(k),
  ): Float64Array => {
    const G = new Float64Array(k * k);
    const g = new Float64Array(k);
    for (let a = 0; a < k; a++) {
      if (usual[a] === Infinity) continue;
      const slope = 1 / (usual[a] + from[a]);
      G[a * k + a] = (slope * slope) / UNUSUAL_SD ** 2;
      g[a] = (slope * (slope * from[a] - Math.log(1 + from[a] / usual[a]))) / UNUSUAL_SD ** 2;
    }
    const row = new Float64Array(k);
    for (const i of places) {
      const per = 1 / scale(i);
      const goal = wanted(i);
      for (let a = 0; a < k; a++) {
        row[a] = columns[a][i] * per;
        const weighed = weights[i] * row[a];
        g[a] += weighed * goal;
        for (let b = 0; b <= a; b++) G[a * k + b] += weighed * row[b];
      }
    }
    for (let a = 0; a < k; a++) for (let b = 0; b < a; b++) G[b * k + a] = G[a * k + b];
    return nonNegative(G, g, k);
  };

  let strengths =
    start ??
    step(
      (i) => Math.exp(2 * ln[i]),
      () => 1,
    );
  let least = misfit(strengths);
  for (let round = 0; round < rounds; round++) {
    const at = Float64Array.from({ length: ln.length }, (_, i) => sumAt(columns, strengths, i));
    const wanted = step(
      (i) => at[i],
      (i) => 1 + 2 * ln[i] - Math.log(at[i]),
      strengths,
    );
    const next = shortened(strengths, wanted, least, misfit);
    if (!next) break;
    const still = least - next.misfit <= STILL * (1 + least);
    strengths = next.strengths;
    least = next.misfit;
    if (still) break;
  }
  return strengths;
}

/** As far from one answer towards another as makes the misfit less; null where no part of the way does. */
function shortened(
  from: Float64Array,
  to: Float64Array,
  least: number,
  misfit: (strengths: Float64Array) => number,
): { strengths: Float64Array; misfit: number } | null {
  for (let share = 1; share > 1e-3; share /= 2) {
    const strengths = from.map((value, c) => value + share * (to[c] - value));
    const found = misfit(strengths);
    if (found < least) return { strengths, misfit: found };
  }
  return null;
}

/** Σ w (ln B − ½ ln Σ β·column)² over the places, or some of them. */
export function misfitOf(
  columns: readonly Float64Array[],
  { ln, weights }: Known,
  strengths: Float64Array,
  places: readonly number[] = all(ln),
): number {
  let sum = 0;
  for (const i of places) sum += weights[i] * (ln[i] - 0.5 * Math.log(sumAt(columns, strengths, i))) ** 2;
  return sum;
}

/** Square of how far strengths are over what is usual, in standard deviations: ½ ln (1 + β/usual) ÷ UNUSUAL_SD each. */
export const unusualOf = ({ usual }: Known, strengths: Float64Array): number =>
  usual.reduce((sum, most, k) => sum + ((0.5 * Math.log(1 + strengths[k] / most)) / UNUSUAL_SD) ** 2, 0);

const all = ({ length }: ArrayLike<number>): number[] => Array.from({ length }, (_, i) => i);

/** Σ β·column at place i. */
export function sumAt(columns: readonly Float64Array[], strengths: ArrayLike<number>, i: number): number {
  let sum = 0;
  for (let c = 0; c < columns.length; c++) sum += strengths[c] * columns[c][i];
  return sum;
}
