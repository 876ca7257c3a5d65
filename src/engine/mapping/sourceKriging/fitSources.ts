import { columnOf, EXPONENTS, spotsOf, termOf } from './sourceTerms';
import { fitStrengths, misfitOf, unusualOf } from './fitStrengths';
import { columnsOf } from './sourceModel';
import type { Exponent, SourceTerm, Spots } from './sourceTerms';
import type { Known } from './fitStrengths';
import type { MarkedSource, Survey } from '../survey';
import type { Place } from '../observations';
import type { SourceModel } from './sourceModel';

/** Variance of ln B by which a sum of squares may miss a field that has phases and directions: the project's choice. */
const UNEXPLAINED = 0.05;

/** An exponent other than the usual one must lessen n ln(misfit) by more than one number taken from the data does by luck. */
const PENALTY = 2;

/** A misfit under this is rounding. */
const NOTHING = 1e-9;

/** Rounds of a fit that is only compared with others. */
const QUICK = 8;

/** Marked with sources: what is fixed of them, and where they are heard. */
type Marks = Pick<Survey, 'sources' | 'elevations'>;

/** A line is most often a balanced load, a point an appliance. */
const USUAL: Record<MarkedSource['kind'], Exponent> = { line: 2, point: 3 };

/** What the marked sources explain of the places, their exponents where not given chosen by the readings. */
export function fitSources(places: readonly Place[], marks: Marks): SourceModel {
  const spots = spotsOf(places, marks.elevations);
  return withStrengths(places, spots, marks, bestExponents(places, spots, marks));
}

/** The same with other readings, or sources that moved: exponents stay, strengths are found anew. */
export function refitSources({ terms }: SourceModel, places: readonly Place[], marks: Marks): SourceModel {
  const exponents = marks.sources.map(
    ({ id, kind }) => terms.find((term) => term.id === id)?.exponent ?? USUAL[kind],
  );
  return withStrengths(places, spotsOf(places, marks.elevations), marks, exponents);
}

function withStrengths(
  places: readonly Place[],
  spots: Spots,
  { sources, elevations }: Marks,
  exponents: readonly Exponent[],
): SourceModel {
  const terms = sources.map((source, k) => termOf(source, elevations, exponents[k]));
  const [background, ...strengths] = fitStrengths(columnsOf(terms, spots), knownOf(places, terms));
  return {
    elevations,
    background,
    terms: terms.map((term, k) => ({ ...term, strength: strengths[k] })),
  };
}

export const knownOf = (places: readonly Place[], terms: readonly Pick<SourceTerm, 'usual'>[]): Known => ({
  usual: [Infinity, ...terms.map(({ usual }) => usual)],
  ln: places.map(({ ln }) => ln),
  weights: places.map(({ variance }) => 1 / (UNEXPLAINED + variance)),
});

/**
 * Exponents of least n ln(misfit) + PENALTY for each that is not the usual one: from the usual ones on, the single change
 * that helps most, until none helps.
 */
function bestExponents(places: readonly Place[], spots: Spots, { sources, elevations }: Marks): Exponent[] {
  const given = sources.map(({ kind, falloff }) => (falloff === 'fit' ? USUAL[kind] : falloff));
  if (!sources.some(({ falloff }) => falloff === 'fit')) return given;
  const columns = sources.map((source) =>
    EXPONENTS.map((exponent) => columnOf(termOf(source, elevations, exponent), spots)),
  );
  const ones = new Float64Array(places.length).fill(1);
  const cost = (exponents: readonly Exponent[]): number => {
    const known = knownOf(
      places,
      exponents.map((exponent, k) => termOf(sources[k], elevations, exponent)),
    );
    const taken = [ones, ...exponents.map((exponent, k) => columns[k][exponent - 1])];
    const strengths = fitStrengths(taken, known, { rounds: QUICK });
    const unusual = exponents.filter((exponent, k) => exponent !== given[k]).length;
    return (
      places.length * Math.log(misfitOf(taken, known, strengths) + NOTHING) +
      unusualOf(known, strengths) +
      PENALTY * unusual
    );
  };
  let best = { exponents: given, cost: cost(given) };
  for (;;) {
    const changes = sources.flatMap(({ falloff }, k) =>
      falloff === 'fit' ? EXPONENTS.filter((e) => e !== best.exponents[k]).map((e) => ({ k, e })) : [],
    );
    const next = changes
      .map(({ k, e }) => best.exponents.map((exponent, l) => (l === k ? e : exponent)))
      .map((exponents) => ({ exponents, cost: cost(exponents) }))
      .reduce((a, b) => (b.cost < a.cost ? b : a));
    // Rounding, not readings, would choose between what is closer.
    if (!(next.cost < best.cost - 1e-9)) return best.exponents;
    best = next;
  }
}
