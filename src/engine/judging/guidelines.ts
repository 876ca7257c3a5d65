/**
 * What a value speaks of: an instant, the median of a day, the mean of a year, a reading at a place, or what one
 * installation alone gives at its nominal load, which no reading of everything at once compares with.
 */
type Basis = 'instant' | 'dayMedian' | 'yearMean' | 'spot' | 'installation';

/** How far a value may be trusted to be what was published. */
type Standing =
  /** Read in a text that states it. */
  | 'stated'
  /** Read in a later text that attributes it. */
  | 'attributed'
  /** From memory, not looked up: treat it so. */
  | 'memory'
  /** A rule of the trade, published nowhere. */
  | 'practice'
  /** Entered by the user. */
  | 'own';

/** The word for values at or above an edge, µT; with `above`, for values strictly above it. */
interface Edge {
  value: number;
  /** The value where the mains has 60 Hz, if it is another there. */
  at60?: number;
  word: string;
  above?: true;
}

/** A set of values that a field is judged by. */
export interface GuidelineSet {
  id: string;
  name: string;
  year: number | null;
  source: string;
  basis: Basis;
  kind: 'limit' | 'precaution' | 'study' | 'practice';
  /** Uses of rooms it speaks of; empty: every use. */
  uses: readonly string[];
  /** Ascending. */
  edges: readonly Edge[];
  standing: Standing;
}

const LONG_STAYS = ['sleeping', 'living', 'work'] as const;

/**
 * Published values and one rule of the trade, at 50 Hz. Limits speak of short-term effects and are met at the value itself;
 * precautionary values speak of long stays. A spot reading compares directly with an instantaneous value only.
 */
export const GUIDELINES: readonly GuidelineSet[] = [
  {
    id: 'common-practice',
    name: 'Common practice',
    year: null,
    source: 'A rule of thumb of the trade; published nowhere',
    basis: 'spot',
    kind: 'practice',
    uses: LONG_STAYS,
    edges: [
      { value: 0, word: 'low' },
      { value: 0.03, word: 'raised' },
      { value: 0.1, word: 'high for long stays', above: true },
    ],
    standing: 'practice',
  },
  {
    id: 'sbm-2015',
    name: 'SBM-2015',
    year: 2015,
    source:
      'Standard of Building Biology Testing Methods SBM-2015, values for sleeping areas, 50 and 16.7 Hz judged apart; there is an edition of 2024, whose values are not these',
    basis: 'spot',
    kind: 'precaution',
    uses: ['sleeping'],
    // Published as < 20, 20–100, 100–500, > 500 nT: 20 is slight and 500 still severe; 100 is in two classes, and
    // counting it as severe is this project's choice.
    edges: [
      { value: 0, word: 'no anomaly' },
      { value: 0.02, word: 'slight anomaly' },
      { value: 0.1, word: 'severe anomaly' },
      { value: 0.5, word: 'extreme anomaly', above: true },
    ],
    standing: 'attributed',
  },
  {
    id: 'europaem-2016',
    name: 'EUROPAEM 2016',
    year: 2016,
    source: 'EUROPAEM EMF Guideline 2016, mean values, places used more than four hours a day',
    basis: 'spot',
    kind: 'precaution',
    uses: LONG_STAYS,
    edges: [
      { value: 0, word: 'below the precautionary values' },
      { value: 0.03, word: 'above the value for sensitive groups', above: true },
      { value: 0.1, word: 'above the precautionary value', above: true },
    ],
    standing: 'memory',
  },
  {
    id: 'pooled-2000-greenland',
    name: 'Pooled studies, 0.3 µT',
    year: 2000,
    source: 'Greenland et al. 2000, pooled analysis of childhood leukaemia',
    basis: 'yearMean',
    kind: 'study',
    uses: LONG_STAYS,
    edges: [
      { value: 0, word: 'below the studied threshold' },
      { value: 0.3, word: 'above the studied threshold', above: true },
    ],
    standing: 'attributed',
  },
  {
    id: 'pooled-2000-ahlbom',
    name: 'Pooled studies, 0.4 µT',
    year: 2000,
    source: 'Ahlbom et al. 2000, pooled analysis of childhood leukaemia, geometric mean',
    basis: 'yearMean',
    kind: 'study',
    uses: LONG_STAYS,
    edges: [
      { value: 0, word: 'below the studied threshold' },
      { value: 0.4, word: 'at or above the studied threshold' },
    ],
    standing: 'stated',
  },
  {
    id: 'netherlands-policy',
    name: 'Netherlands policy',
    year: null,
    source: "Netherlands policy on new situations near lines, children's long stays",
    basis: 'yearMean',
    kind: 'precaution',
    uses: LONG_STAYS,
    edges: [
      { value: 0, word: 'within the policy value' },
      { value: 0.4, word: 'above the policy value', above: true },
    ],
    standing: 'stated',
  },
  {
    id: 'switzerland-nisv',
    name: 'Switzerland, NISV',
    year: null,
    source: 'Swiss ordinance NISV, one installation at nominal load, places of sensitive use',
    basis: 'installation',
    kind: 'limit',
    uses: LONG_STAYS,
    edges: [
      { value: 0, word: 'within the installation limit' },
      { value: 1, word: 'above the installation limit', above: true },
    ],
    standing: 'attributed',
  },
  {
    id: 'italy-2003',
    name: 'Italy, 8 July 2003',
    year: 2003,
    source:
      'Italy, DPCM 8 July 2003 (GU 200): limit 100 µT at any instant; attention value 10 and quality goal 3 µT as medians of 24 h in places used four hours a day or more, the quality goal for new lines and new buildings',
    basis: 'dayMedian',
    kind: 'limit',
    uses: LONG_STAYS,
    edges: [
      { value: 0, word: 'within the quality goal' },
      { value: 3, word: 'above the quality goal for new buildings', above: true },
      { value: 10, word: 'above the attention value', above: true },
      { value: 100, word: 'above the limit', above: true },
    ],
    standing: 'attributed',
  },
  {
    id: 'eu-1999',
    name: 'ICNIRP 1998, EU 1999',
    year: 1999,
    source: 'Council Recommendation 1999/519/EC after ICNIRP 1998: 100 µT at 50 Hz, 83.3 µT at 60 Hz',
    basis: 'instant',
    kind: 'limit',
    uses: [],
    edges: [
      { value: 0, word: 'within the reference level' },
      { value: 100, at60: 83.3, word: 'above the reference level', above: true },
    ],
    standing: 'attributed',
  },
  {
    id: 'icnirp-2010',
    name: 'ICNIRP 2010',
    year: 2010,
    source: 'ICNIRP 2010, general public, 25–400 Hz, established short-term effects',
    basis: 'instant',
    kind: 'limit',
    uses: [],
    edges: [
      { value: 0, word: 'within the reference level' },
      { value: 200, word: 'above the reference level', above: true },
    ],
    standing: 'attributed',
  },
  {
    id: 'ieee-c95',
    name: 'IEEE C95.1',
    year: null,
    source: 'IEEE C95.1 (earlier C95.6), head and torso, general public, 20–759 Hz; attribution weak',
    basis: 'instant',
    kind: 'limit',
    uses: [],
    edges: [
      { value: 0, word: 'within the reference level' },
      { value: 904, word: 'above the reference level', above: true },
    ],
    standing: 'attributed',
  },
];

/** A set as it reads at the frequency of the mains. */
export const atMains = (set: GuidelineSet, mains: 50 | 60): GuidelineSet =>
  mains === 50
    ? set
    : { ...set, edges: set.edges.map((edge) => ({ ...edge, value: edge.at60 ?? edge.value })) };

/** What of a room a set judges: a limit holds at the highest place, other values speak of the room as a whole. */
export const judgesBy = ({ kind }: Pick<GuidelineSet, 'kind'>): 'highest' | 'middle' =>
  kind === 'limit' ? 'highest' : 'middle';

// What comes of logarithms and changed units misses an edge by its last binary digits.
const ROUNDING = 1e-9;

/** Whether a set speaks of rooms of a use, and of what a reading compares with. */
export const speaksOf = ({ basis, uses }: Pick<GuidelineSet, 'basis' | 'uses'>, use: string): boolean =>
  basis !== 'installation' && (uses.length === 0 || uses.includes(use));

/**
 * The word a set has for a value, µT, in a room of that use; null where the set does not speak of such rooms, or of nothing
 * that a reading compares with.
 */
export function classOf(set: GuidelineSet, use: string, value: number): string | null {
  if (!speaksOf(set, use)) return null;
  let word: string | null = null;
  for (const edge of set.edges) {
    const met = edge.above ? value > edge.value * (1 + ROUNDING) : value >= edge.value * (1 - ROUNDING);
    if (met) word = edge.word;
  }
  return word;
}
