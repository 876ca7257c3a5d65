import type { MeterSpec } from '../../src/engine/survey/meter';
import type { SurveyReading } from '../../src/engine/mapping/survey';

/** A meter that is never wrong, for tests of what comes after it. */
const EXACT_METER: MeterSpec = {
  percent: 0,
  absolute: 0,
  coverage: 'limits',
  resolution: 0,
  range: [0, 1e9],
  gain: 1,
  offset: 0,
};

/** A settled reading by an exact meter, 1 m over level l1, unless said otherwise. */
export const reading = (
  id: number,
  at: readonly [number, number],
  value: number,
  rest: Partial<SurveyReading> = {},
): SurveyReading => ({
  id: `m${id}`,
  level: 'l1',
  at,
  height: 1,
  value,
  meter: EXACT_METER,
  limit: null,
  min: null,
  max: null,
  peak: false,
  ...rest,
});

/** A home in which no source is marked. */
export const UNMARKED = { sources: [], elevations: {}, walls: [] } as const;
