import type { Assessment } from '../engine/assess';
import { isJudged, type RoomFigures } from '../engine/judging/rooms';
import type { FieldUnit, Home, Meter, Reading } from '../home/home';
import { BAND } from '../home/kindDefaults';
import { edgeText } from './canvas';
import { changeLead, type FurnitureChange } from './furniture';
import { axesText, wanderText } from './basis';
import {
  countText,
  fieldText,
  fixedText,
  inUnit,
  percentText,
  readingText,
  unitName,
  withUnit,
} from './numbers';
import { parseField } from './quantities';
import { numberOf, roomName } from './things';

/** Titles, heads of tables and short words of the report. */
export const reportWords = {
  shortCautions:
    'A planning figure, not a health measure; precautionary values are not safety limits. Open no panel and touch no wiring. A licensed electrician looks into suspected faults; lines, cables and transformers are the network operator’s. The last page has them all.',
  dailyNote: 'In the table, and on the first page, the dose of a piece is that of whoever uses it.',
  to: 'to',
  kicker: 'The magnetic field of the mains in a home',
  target: 'target',
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
  inRooms: (piece: string) =>
    `${piece.charAt(0).toUpperCase()}${piece.slice(1)} in each room, placed so that the home as a whole has the least`,
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
): Part[] {
  return (change && changeLead(change)) ?? foundLead(home, assessment, target);
}

function foundLead(home: Home, { rooms }: Assessment, target: number): Part[] {
  const unit = home.settings.fieldUnit;
  const aim = `${edgeText(target, unit)} ${unitName(unit)}`;
  const judged = rooms.filter(isJudged).filter(({ id }) => home.rooms[id]?.use !== 'grounds');
  if (judged.length === 0) return [plain('No room has enough of its floor drawn to be judged.')];
  const sleeping = judged.filter(({ id }) => home.rooms[id]?.use === 'sleeping');
  const asked = sleeping.length > 0 ? sleeping : judged;
  const worst = asked.reduce((a, b) => (b.overTarget > a.overTarget ? b : a));
  if (worst.overTarget === 0) {
    const which = sleeping.length > 0 ? 'sleeping room' : 'room';
    return [
      plain(
        asked.length === 1
          ? `The ${roomInSentence(home, worst.id)} lies below the target of ${aim}.`
          : `Every ${which} that was judged lies below the target of ${aim}.`,
      ),
    ];
  }
  return [
    plain(
      `${percentText(worst.overTarget)} of the ${roomInSentence(home, worst.id)} lies over the target of ${aim}; half of it lies below ${withUnit(worst.median, unit)}`,
    ),
    { text: ` (${fieldText(worst.low, unit)}–${fieldText(worst.high, unit)})`, tone: 'soft' },
    plain('.'),
  ];
}

const lowerFirst = (text: string): string => text.charAt(0).toLowerCase() + text.slice(1);

const roomInSentence = (home: Home, id: string): string => lowerFirst(roomName(home, id));

/** What was found, room by room, where it matters; and what could not be judged. */
export function foundSentences(home: Home, { rooms }: Assessment, target: number): string[] {
  const unit = home.settings.fieldUnit;
  const over = rooms
    .filter((room) => isJudged(room) && room.overTarget > 0 && home.rooms[room.id]?.use !== 'grounds')
    .sort((a, b) => b.overTarget - a.overTarget);
  const told = over
    .slice(0, 4)
    .map(
      (room) =>
        `${capital(roomInSentence(home, room.id))}: ${percentText(room.overTarget)} of the floor lies over the target; the highest estimate is ${withUnit(room.max, unit)}.`,
    );
  const none =
    over.length === 0
      ? [`No room that was judged lies over the target of ${edgeText(target, unit)} ${unitName(unit)}.`]
      : [];
  const more =
    over.length > 4 ? [`${countText(over.length - 4, 'more room')} in part; the table has them all.`] : [];
  return [...told, ...none, ...more, ...hatchedSentences(home, rooms)];
}

function hatchedSentences(home: Home, rooms: readonly RoomFigures[]): string[] {
  const unjudged = rooms
    .filter((room) => !isJudged(room))
    .map(({ id, supported }) => `${roomInSentence(home, id)} (${percentText(supported)} of it drawn)`);
  const part = rooms
    .filter((room) => isJudged(room) && room.supported < 0.9)
    .map(({ id }) => roomInSentence(home, id));
  return [
    ...(unjudged.length > 0 ? [`Too little drawn to judge: ${unjudged.join(', ')}.`] : []),
    ...(part.length > 0 ? [`Hatched in part: ${part.join(', ')}.`] : []),
  ];
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** '±5 % ±0.002 µT, limits', or with k = 2 */
export function accuracyText(meter: Meter, unit: FieldUnit): string {
  const percent = `±${fixedText(meter.percent, Number.isInteger(meter.percent) ? 0 : 1)}\u2009%`;
  const absolute = meter.absolute > 0 ? ` ±${edgeText(meter.absolute, unit)} ${unitName(unit)}` : '';
  return `${percent}${absolute}, ${meter.coverage === 'k2' ? 'k = 2' : 'limits'}`;
}

/** The band of frequencies in hertz; a meter nobody described so has the one that files are filled in with. */
export const bandText = ({ band: [low, high] }: Meter): string =>
  low === BAND[0] && high === BAND[1] ? 'not stated' : `${low}–${high}`;

/** 'true = 0.93 × shown + 0.004', or none. */
export function correctionText(meter: Meter, unit: FieldUnit): string {
  if (meter.gain === 1 && meter.offset === 0) return 'none';
  const sign = meter.offset < 0 ? '−' : '+';
  const offset = meter.offset === 0 ? '' : ` ${sign} ${fieldText(Math.abs(meter.offset), unit)}`;
  return `true = ${fixedText(meter.gain, 3)} × shown${offset}`;
}

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
