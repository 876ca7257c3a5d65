import type { Assessment } from '../engine/assess';
import type { FieldUnit, Home, Meter, Reading } from '../home/home';
import { BAND } from '../home/kindDefaults';
import { SUPPLY_OFF } from './assessment';
import { edgeText } from './canvas';
import { foundLead } from './finding';
import { changeLead, type FurnitureChange } from './furniture';
import { axesText, wanderText } from './basis';
import { countText, fieldText, fixedText, inUnit, readingText, unitName } from './numbers';
import { parseField } from './quantities';
import { numberOf } from './things';

/** Titles, heads of tables and short words of the report. */
export const reportWords = {
  shortCautions:
    'A planning figure, not a health measure; precautionary values are not safety limits. Open no panel and touch no wiring. A licensed electrician looks into suspected faults; lines, cables and transformers are the network operator’s. “Cautions” near the end has them all.',
  dailyNote: 'In the table, and on the first page, the dose of a piece is that of whoever uses it.',
  to: 'to',
  kicker: 'The magnetic field of the mains in a home',
  target: 'target',
  contour: 'contour',
  found: 'What was found',
  rooms: 'Rooms',
  sure: 'How sure this is',
  cautions: 'Cautions',
  advice: 'What to do',
  readings: 'Readings',
  arrangement: 'Where the furniture stands best',
  arrangementTaken: 'Where the furniture stood and stands',
  asFound: 'As found',
  asItStands: 'As it stands',
  proposed: 'As proposed',
  stays: 'stays where it is',
  stayed: 'stands as found',
  inRooms: (piece: string, aim: FurnitureChange['aim']) =>
    `${piece.charAt(0).toUpperCase()}${piece.slice(1)} in each room, placed so that ${aim === 'mean' ? 'the home as a whole' : 'whoever is worst off'} has the least`,
  evidence: 'Evidence: every reading predicted without itself',
  method: 'How it was worked out',
  miss: 'typical miss without the reading',
  used: 'used',
  lies: 'read lies',
  below: 'below',
  above: 'above',
  intervals:
    'An interval of 90\u2009% speaks of the field at its place without the noise of the meter: the 5th and the 95th percentile.',
  meters: 'Meters',
  limits: 'What the method cannot tell',
  guideline: 'Published values used',
  noMapYet: 'The map is still being worked out.',
  madeWith: 'made with Stillroom on the surveyor’s own device',
  restPages: 'maps and readings, how they were worked out, how far to rely on it',
  reliability: 'How far to rely on it',
  signs: {
    reading: 'reading',
    numbered: 'reading by its number in the table',
    supplyOff: 'reading, supply off',
    below: 'below the meter’s range',
    leftOut: 'left out',
    point: 'point source',
    line: 'line source',
    unsupported: 'unsupported',
    piece: 'bed, cot, desk or seat',
    north: 'north',
  },
} as const;

/** A piece of a sentence and how it is set. */
export interface Part {
  text: string;
  tone: 'plain' | 'gain' | 'soft';
}

const plain = (text: string): Part => ({ text, tone: 'plain' });

/** The finding in one sentence. */
export function leadParts(
  home: Home,
  assessment: Assessment,
  target: number,
  change: FurnitureChange | null,
  supplyOff: boolean,
): Part[] {
  const lead = (change && changeLead(change)) ?? foundLead(home, assessment, target);
  return supplyOff ? [plain(`${SUPPLY_OFF} `), ...lead] : lead;
}

/** '±5 % ±0.002 µT, limits', or with k = 2 */
export function accuracyText(meter: Meter, unit: FieldUnit): string {
  const percent = `±${fixedText(meter.percent, Number.isInteger(meter.percent) ? 0 : 1)}\u2009%`;
  const absolute = meter.absolute > 0 ? ` ±${edgeText(meter.absolute, unit)} ${unitName(unit)}` : '';
  return `${percent}${absolute}, ${meter.coverage === 'k2' ? 'k = 2' : 'limits'}`;
}

/** The band of frequencies in hertz; a meter nobody described so has the one that files are filled in with. */
export const bandText = ({ band: [low, high] }: Meter): string =>
  low === BAND[0] && high === BAND[1] ? 'not stated' : `${low}–${high}`;

/** ' with the House meter (±5 %)', ' with 2 meters' */
export function metersUsed(home: Home, used: readonly string[]): string {
  const meters = used.flatMap((id) => home.meters[id] ?? []);
  if (meters.length === 0) return ' with a meter not described';
  if (meters.length > 1) return ` with ${countText(meters.length, 'meter')}`;
  const [meter] = meters;
  return ` with the ${meter!.name || 'meter'} (±${fixedText(meter!.percent, Number.isInteger(meter!.percent) ? 0 : 1)}\u2009%)`;
}

/** The meter a reading was taken with: its own, or the home's first. */
export function meterOf(home: Home, reading: Pick<Reading, 'meter'>): Meter | null {
  return home.meters[reading.meter ?? Object.keys(home.meters)[0] ?? ''] ?? null;
}

/** What the display showed in two figures, with its sign where it was out of range. */
export function plainReadingText(reading: Reading, unit: FieldUnit): string {
  return limitSign(reading) + fieldText(reading.value, unit);
}

/**
 * What the display showed, with all its digits, for a table: those that were typed; of a value that came without, all that
 * it has, and no fewer than the meter's.
 */
export function fullReadingText(reading: Reading, unit: FieldUnit, home: Home): string {
  const text = readingText(reading.value, unit, meterOf(home, reading)?.resolution ?? 0);
  // A resultant of three axes was worked out: it is no finer than what the display showed of each.
  const decimals = reading.axes
    ? decimalsOf(text)
    : (typedDecimals(reading, unit) ??
      Math.max(decimalsOf(text), decimalsOf(readingText(reading.value, unit))));
  return limitSign(reading) + fixedText(inUnit(reading.value, unit), decimals);
}

const decimalsOf = (text: string): number => /[.,](\d+)/.exec(text)?.[1]!.length ?? 0;

/** Decimals of what was typed, in a unit; null where the value was not typed so. */
function typedDecimals({ text, value }: Reading, unit: FieldUnit): number | null {
  const typed = parseField(text, unit);
  if (!typed.ok || /\de/i.test(text) || Math.abs(typed.µT - value) > 1e-9 * value) return null;
  return Math.max(0, decimalsOf(text) + Math.round(Math.log10(inUnit(1, typed.unit) / inUnit(1, unit))));
}

const limitSign = ({ limit }: Reading): string =>
  limit === 'below' ? '<\u2009' : limit === 'above' ? '>\u2009' : '';

/** '1 : 100 on A4 · north up · 1.0 m above the floor · µT' */
export function mapCaption(scale: number | null, northUp: boolean, height: string, unit: string): string {
  const measured = scale === null ? [] : [`1 : ${scale} on A4`];
  return [...measured, ...(northUp ? ['north up'] : []), `${height} above the floor`, unit].join(' · ');
}

/** What is particular about some readings: left out and why, peak-hold, and the surveyor's own words. */
export function readingNotes(readings: readonly Reading[], unit: FieldUnit): string[] {
  return readings.flatMap(({ id, excluded, taken, note, min, max, axes }) => {
    const notes = [
      excluded && `left out (${excluded})`,
      taken === 'peak' && 'a peak, not the settled value',
      min !== null && max !== null && wanderText(min, max, unit),
      axes && axesText(axes, unit),
      note,
    ].filter(Boolean);
    return notes.length > 0 ? [`${numberOf(id)}: ${notes.join('; ')}.`] : [];
  });
}

/** Under the plan of the first page: how to read it. */
export function planNote(
  level: string,
  target: number,
  unit: FieldUnit,
  mapped: boolean,
  moved: boolean,
): string {
  const map = mapped
    ? ` The darker the ink, the stronger the field. Chain line: ${edgeText(target, unit)} ${unitName(unit)}.`
    : '';
  return `${level}.${map}${moved ? ' Dashed: where a piece stands now.' : ''}`;
}

export const ONE_VISIT =
  'One visit can differ from the year by a fifth and more; the words beside each room take it to be typical.';

/** What a drawing of the plan is, for whoever cannot see it. */
export const mapLabel = (title: string): string => `Plan with the estimated field: ${title}`;
