import type { Assessment } from '../engine/assess';
import type { GuidelineSet } from '../engine/judging/guidelines';
import type { FieldUnit, Home, Point, Reading } from '../home/home';
import { edgeText } from './canvas';
import { dateText } from './dates';
import { fieldText, fixedText, lengthText, unitName } from './numbers';
import { SAMPLED_REACH_TEXT, samplingFormulaSentences } from './samplingFormula';
import { SOURCE_WEIGHING, sourceFormulaSentences } from './sourceFormula';
import { ROUND_WORDS } from './things';

/** Titles and heads of the part from which a colleague can work everything out again. */
export const basisWords = {
  title: 'To work it out again',
  number: 'no.',
  level: 'level',
  doses: 'Daily doses as things stand',
  allUsers: 'mean of its people',
  notDrawn: 'map not drawn there',
  pieces: 'Furniture as it stands',
  sources: 'Marked sources',
  levels: 'Levels',
  rooms: 'Corners of the rooms, m',
  walks: 'Along the walks',
  steps: 'Step by step',
  otherRounds: 'Readings of the other rounds',
  edges: (unit: FieldUnit) => `from, ${unitName(unit)}`,
  edgeAbove: (value: string) => `over ${value}`,
  word: 'word',
  use: 'who',
  falloff: (falloff: 1 | 2 | 3 | 'fit') =>
    falloff === 'fit' ? 'to be found' : `1/r${['', '', '²', '³'][falloff]}`,
  origin: { outside: 'outside', house: 'the house', unknown: 'not known' },
  side: { left: 'left half', right: 'right half', middle: 'middle' },
} as const;

/** '4.20, −1.00; 5.00, 2.00': places of the plan, metres. */
export const placesText = (places: readonly Point[]): string =>
  places.map(([x, y]) => `${fixedText(x, 2)}, ${fixedText(y, 2)}`).join('; ');

const CLOCK = /^(\d{4}-\d{2}-\d{2})T(\d{2}:\d{2})/;

/** How a reading's time stands in a table: the hour on one day, the date with it over several; null where none is known. */
export function timeColumn(readings: readonly Reading[]): ((reading: Reading) => string) | null {
  const days = new Set(readings.flatMap(({ time }) => CLOCK.exec(time ?? '')?.[1] ?? []));
  if (days.size === 0) return null;
  return ({ time }) => {
    const [, day, clock] = CLOCK.exec(time ?? '') ?? [];
    if (!day || !clock) return '—';
    return days.size === 1 ? clock : `${day.slice(5)} ${clock}`;
  };
}

/** What is alike for all readings of a table and so has no column. */
export function alikeSentence(home: Home, readings: readonly Reading[], meterName: string | null): string {
  const heights = [...new Set(readings.map(({ height }) => height))];
  const days = [...new Set(readings.flatMap(({ time }) => CLOCK.exec(time ?? '')?.[1] ?? []))];
  const parts = [
    ...(meterName ? [`as shown by the ${meterName}`] : ['as shown by the meter of that number']),
    ...(heights.length === 1
      ? [`all ${lengthText(heights[0]!, home.settings.lengthUnit)} above the floor`]
      : []),
    ...(days.length === 1 ? [`on ${dateText(days[0]!)}`] : []),
  ];
  const text = parts.join(', ');
  return `${text.charAt(0).toUpperCase()}${text.slice(1)}.`;
}

/** 'With the supply off (supply off), 2 March 2026': a round that the map does not show. */
export function roundTitle(home: Home, round: string): string {
  const { name, kind, date } = home.rounds[round]!;
  const what = name.toLowerCase() === ROUND_WORDS[kind] ? name : `${name} (${ROUND_WORDS[kind]})`;
  return date ? `${what}, ${dateText(date)}` : what;
}

/** The method in its formulas, one sentence a step. B in µT, distances in metres, ln to the base e. */
export function formulaSentences(
  home: Home,
  { fitted, evidence }: Pick<Assessment, 'fitted' | 'evidence'>,
  steps: readonly number[],
): string[] {
  const { variogram, power, method, defaultModel, sources, sampled } = fitted;
  const [c0, c1, a] = [
    fixedText(variogram.nugget, 4),
    fixedText(variogram.sill, 4),
    fixedText(variogram.range, 2),
  ];
  const [name, of] = sources ? ['Variogram of the remainder', 'the remainder'] : ['Variogram', 'ln B'];
  const weighing = sources
    ? SOURCE_WEIGHING
    : method === 'inverse-distance'
      ? `Estimate: the mean of ln B with weights 1/d to the power ${fixedText(power, 1)}, d the distance in space from each reading of the level. Its interval is that of these weights w under the variogram: variance = C(0) − 2 w·c + w·K·w, with c the covariances C of the readings with the place and K those among the readings.`
      : 'Estimate: ordinary kriging of ln B from all readings of the level, K = C among the readings with nugget and meter variance on its diagonal. No spike at a reading: the estimate is of the field beside it.';
  return [
    'Reading: B = gain × shown + offset. Its standard uncertainty u is the root of the sum of squares of the accuracy (÷ √3 where it is stated as limits, ÷ 2 where as k = 2) and of the display’s step ÷ 2√3, times gain; ln B has the variance ln(1 + u²/B²). A display that wandered from p to q adds (ln q/p)²/12; a peak adds 0.2². Below the range, B is taken as half the limit, above it as twice the limit, either with the standard deviation (ln 2)/2 of ln B; where the map still lies on the wrong side of the limit, by more than a factor of two, nothing is drawn within a metre.',
    ...(sampled
      ? samplingFormulaSentences(sampled)
      : [
          'Height: a reading Δh metres above or below the height asked for has (0.6 Δh)² added to its variance.',
          ...(sources ? sourceFormulaSentences(home, sources, evidence.sources) : []),
          `${defaultModel ? `${name} (the default, not fitted to this home)` : `${name}, fitted to pairs of places within a level, over all levels`}: half the mean square difference of ${of} at distance h is ${c0} + ${c1} × (1 − exp(−h/${a} m)) for h > 0, and 0 at h = 0: nugget ${c0}, partial sill ${c1}, range ${a} m. Covariance C(h) = ${c1} × exp(−h/${a} m); C(0) = ${c0} + ${c1}.`,
          weighing,
        ]),
    `${sampled ? 'Each level is mapped from the same samples' : sources ? 'Of the remainder each level is mapped by itself' : 'Each level is mapped by itself'}, in cells of ${steps.map((step) => fixedText(step, 1)).join(' or ')} m counted from the plan’s zero. The median is exp of the estimate, its 90\u2009% interval exp(estimate ± 1.645 × √variance): ${sampled ? 'the' : 'the nugget is kept in it, the'} meter’s variance is not${sampled ? ' in it' : ''}. Nothing is drawn where high and low differ by more than a factor of ten, or the nearest reading is further off than ${sampled ? SAMPLED_REACH_TEXT : '3 m indoors'} and 10 m in grounds.`,
    `Dose: mean field over the zone × hours, at the height of the piece. The zone is the middle 0.6 m of a bed or cot over its whole length, or the left or right half of the mattress as someone lying face up has them; at a desk a square of 0.6 × 0.6 m before its foot side; on a seat the middle 0.6 × 0.6 m. It is filled with equal cells of at most 0.2 m; their mean is taken as log-normal with the mean and variance that the estimates and their covariances give it${sampled ? ' in each sample, and its median and interval are those of all samples together' : ''}. A piece’s dose is the sum over its users divided by their number.`,
  ];
}

/** How surely one dose is lower than another, and why that may be less than their intervals suggest. */
export function oddsSentence(meanSquareZ: number): string {
  const wider = Math.max(1, meanSquareZ);
  const more =
    wider < 1.05
      ? ''
      : ` There, and not in the intervals, the covariance of the errors is multiplied by ${fixedText(wider, 1)}: by so much, as a mean square, the left-out readings missed more than their own standard errors. So it may be less sure than two intervals that lie apart suggest.`;
  return `How surely a dose is lower: the probability that it is, with the errors of both places and their covariance.${more}`;
}

/** What the search for places went by. */
export const cautiousSentence = (cautious: boolean): string =>
  cautious
    ? 'The places were searched for on the upper bound of the field, its 95th percentile (cautious).'
    : 'The places were searched for on the median of the field (not cautious).';

/** Where the numbers live, and how they are worked out without the page. */
export function fileSentence(title: string, file: string, date: string | null, round: string): string {
  return `The home “${title}”${date ? ` of ${dateText(date)}` : ''} is kept in the file ${file}, which the homes menu saves; it holds every number it takes. From the program’s folder the command line works all of it out again: npm run assess -- ${file} --round ${round} --table prints rooms and doses; --along and a walk’s id prints a walk, --arrange the search for places, --help the rest.`;
}

/** Year, and what comparing takes for granted, stand in `guidelineSentence`; the edges stand in a table under it. */
export function edgeRows(set: GuidelineSet, unit: FieldUnit): string[][] {
  return set.edges.map(({ value, word, above }) => {
    const edge = value === 0 ? '0' : edgeText(value, unit);
    return [above ? basisWords.edgeAbove(edge) : edge, word];
  });
}

/** The set, its year and the rooms it speaks of. */
export const setTitle = ({ name, year, uses }: GuidelineSet): string =>
  `${name}${year !== null && !name.includes(String(year)) ? `, ${year}` : ''}${uses.length > 0 ? `; for rooms of use: ${uses.join(', ')}` : '; for rooms of every use'}`;

/** The three axes that a resultant was worked out from. */
export const axesText = (axes: readonly number[], unit: FieldUnit): string =>
  `axes ${axes.map((axis) => fieldText(axis, unit)).join(', ')} ${unitName(unit)}`;

/** 'wandered from 0.10 to 0.14 µT', of a display. */
export const wanderText = (min: number, max: number, unit: FieldUnit): string =>
  `wandered from ${fieldText(min, unit)} to ${fieldText(max, unit)} ${unitName(unit)}`;
