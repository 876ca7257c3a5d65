import type { Form } from '../layout.svelte';

/** Where the parts of the ruler stand, pixels from its left edge, and what there is room for. */
export interface RulerForm {
  /** Right edge of the words, and the bracket beside them; null: no words. */
  words: { right: number; bracket: number } | null;
  /** Right edge of the numerals. */
  numeral: number;
  /** Left edge and width of the ink. */
  ink: number;
  inkWidth: number;
  /** Left end of a reading's tick, and its length. */
  reading: number;
  readingLength: number;
  /** Middle of the discs. */
  disc: number;
  /** Where leaders leave the level, reach their row's level, and end; null: no leaders. */
  leaders: { elbow: number; level: number; end: number } | null;
  /** Legal values above a torn break. */
  torn: boolean;
  /** µT; grows where readings need it. */
  range: readonly [number, number];
  /** The only values with a tick and a numeral; null: the whole edge of a slide rule. */
  numerals: readonly number[] | null;
}

const FULL_RANGE = [0.012, 4.2] as const;

export const RULER_FORMS: Record<Form, RulerForm> = {
  wide: {
    words: { right: 64, bracket: 73 },
    numeral: 102,
    ink: 117,
    inkWidth: 23,
    reading: 142,
    readingLength: 8,
    disc: 168,
    leaders: { elbow: 190, level: 224, end: 236 },
    torn: true,
    range: FULL_RANGE,
    numerals: null,
  },
  desk: {
    words: null,
    numeral: 38,
    ink: 52,
    inkWidth: 21,
    reading: 75,
    readingLength: 8,
    disc: 96,
    leaders: null,
    torn: true,
    range: FULL_RANGE,
    numerals: null,
  },
  tablet: {
    words: null,
    numeral: 34,
    ink: 43,
    inkWidth: 18,
    reading: 63,
    readingLength: 6,
    disc: 52,
    leaders: null,
    torn: false,
    range: [0.016, 3.5],
    numerals: [0.02, 0.05, 0.1, 0.2, 0.5, 1, 2],
  },
  phone: {
    words: null,
    numeral: 30,
    ink: 40,
    inkWidth: 18,
    reading: 60,
    readingLength: 6,
    disc: 49,
    leaders: null,
    torn: false,
    range: [0.018, 3.3],
    numerals: [0.02, 0.05, 0.1, 0.2, 0.5, 1, 2],
  },
};
