import { correct, leastShown, lnVariance, standardUncertainty } from '../survey/meter';
import type { SurveyReading } from './survey';

type Limited = false | 'below' | 'above';

/** What all readings at one place say together. */
export interface Place {
  level: string;
  x: number;
  y: number;
  height: number;
  /** ln of the field in µT. */
  ln: number;
  /** Of `ln`, by the meters and the unrest of the display, not by the field's own unevenness. */
  variance: number;
  /** Nothing but readings past an end of the meter's range, and which: it pulls the map and does not test it. */
  limited: Limited;
  ids: readonly string[];
}

interface Observation {
  ln: number;
  variance: number;
  limited: Limited;
}

/** Two readings closer than this, in plan and in height, are one place. */
const SAME = 1e-3;

/** A logarithm needs a floor, µT: no survey meter tells less than this from nothing. */
const FLOOR = 1e-3;

/** Standard deviation of ln B by which a peak-hold figure may miss the steady value: the project's choice. */
const PEAK_LN_SD = 0.2;

/** Readings as places: corrected, in ln B, those of one level and height closer than 1 mm made one. */
export function observe(readings: readonly SurveyReading[]): Place[] {
  const gathered: { readings: SurveyReading[]; observations: Observation[] }[] = [];
  for (const reading of readings) {
    const same = gathered.find((place) => together(place.readings[0], reading));
    if (same) {
      same.readings.push(reading);
      same.observations.push(observation(reading));
    } else gathered.push({ readings: [reading], observations: [observation(reading)] });
  }
  return gathered.map(({ readings, observations }) => ({
    level: readings[0].level,
    x: readings[0].at[0],
    y: readings[0].at[1],
    height: readings[0].height,
    ...merged(observations),
    ids: readings.map(({ id }) => id),
  }));
}

function together(a: SurveyReading, b: SurveyReading): boolean {
  return (
    a.level === b.level &&
    Math.abs(a.height - b.height) < SAME &&
    Math.hypot(a.at[0] - b.at[0], a.at[1] - b.at[1]) < SAME
  );
}

function observation(reading: SurveyReading): Observation {
  const { meter, value, limit } = reading;
  if (limit === 'below' || value < meter.range[0] || value === 0)
    return pull(correct(meter, limit && value > 0 ? value : leastShown(meter)), 'below');
  if (limit === 'above' || value > meter.range[1])
    return pull(correct(meter, limit && value > 0 ? value : meter.range[1]), 'above');
  const field = Math.max(correct(meter, value), FLOOR);
  return {
    ln: Math.log(field),
    variance:
      lnVariance(field, standardUncertainty(meter, value)) +
      unrest(reading) +
      (reading.peak ? PEAK_LN_SD ** 2 : 0),
    limited: false,
  };
}

/**
 * Past an end of the range the field is taken as half or twice the limit, and the limit itself as two standard deviations
 * off: sure enough that no neighbour draws the map to the wrong side of it. The project's choice.
 */
const LIMIT_LN = Math.LN2;
const LIMIT_VARIANCE = (LIMIT_LN / 2) ** 2;

const pull = (limit: number, limited: 'below' | 'above'): Observation => ({
  ln: Math.log(Math.max(limit, FLOOR)) + (limited === 'above' ? LIMIT_LN : -LIMIT_LN),
  variance: LIMIT_VARIANCE,
  limited,
});

/** A display that wandered between two values: rectangular in ln B (JCGM 100:2008, 4.3.7). */
function unrest({ min, max, meter }: SurveyReading): number {
  if (min === null || max === null || max <= min) return 0;
  const low = Math.max(correct(meter, min), FLOOR);
  const high = Math.max(correct(meter, max), FLOOR);
  return Math.log(high / low) ** 2 / 12;
}

/**
 * The weighted mean of ln B. A meter's accuracy is common to all it shows and does not average out, so the variance is the
 * harmonic mean of the readings' own, and their scatter is added as a standard error (JCGM 100:2008, 4.2.3).
 */
function merged(observations: readonly Observation[]): Observation {
  if (observations.length === 1) return observations[0];
  const exact = observations.filter(({ variance }) => variance === 0);
  const counted = exact.length > 0 ? exact : observations;
  const weights = counted.map(({ variance }) => (exact.length > 0 ? 1 : 1 / variance));
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  const ln = counted.reduce((sum, observation, i) => sum + weights[i] * observation.ln, 0) / total;
  const spread =
    counted.reduce((sum, observation, i) => sum + weights[i] * (observation.ln - ln) ** 2, 0) / total;
  return {
    ln,
    variance:
      (exact.length > 0 ? 0 : counted.length / total) +
      (counted.length > 1 ? spread / (counted.length - 1) : 0),
    limited: observations.every(({ limited }) => limited) && observations[0].limited,
  };
}
