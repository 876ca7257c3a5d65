import type { FieldUnit, LengthUnit, Meter } from '../home/home';
import {
  countText,
  fieldText,
  fixedText,
  intervalText,
  lengthText,
  readingText,
  unitName,
  withUnit,
} from './numbers';
import { placeText } from './panels';

export const survey = {
  title: 'Readings',
  lead: 'Stand still, wait for the meter to settle, press the place on the plan, type the value.',
  reading: (number: string) => `Reading ${number}`,
  inRoom: (room: string) => `in ${room}`,
  outside: 'outside every room',
  at: (height: string) => `at ${height}`,
  value: 'Value',
  unit: 'Unit',
  keep: 'Keep',
  itWas: (unit: FieldUnit) => `It was ${unitName(unit)}`,
  /** Puts the cross back to where a reading was taken, for a repeat. */
  againAt: (number: string) => `at ${number} again`,
  isAgainAt: (number: string) => `where ${number} was read`,
  keepAllTheSame: 'Keep all the same',
  readingOfHome: (number: string) => `Reading ${number} of this home`,
  valueToo:
    'The value is missing. Type what the display showed most of the time, beside its lowest and highest.',
  more: 'more',
  less: 'less',
  placeNone: 'press the plan, or type it',
  height: 'Height',
  lowest: 'lowest',
  highest: 'highest',
  valueShort: 'value',
  belowRange: 'below range',
  aboveRange: 'above range',
  inRange: 'in range',
  lowHigh: 'low–high',
  xyz: 'x y z',
  note: 'note',
  noteLabel: 'Note',
  low: 'Lowest',
  high: 'Highest',
  back: 'take the last figure away',
  taken: 'Taken',
  settled: 'settled',
  peak: 'peak hold',
  limit: 'Display',
  meter: 'Meter',
  round: 'Round',
  excluded: 'Leave out, because',
  excludedPlaceholder: 'empty while it is used',
  leftOut: 'left out',
  remove: 'take away',
  list: 'All readings',
  none: 'No readings in this round yet.',
  order: 'Order',
  byNumber: 'by number',
  byValue: 'by value',
  meters: 'Meters',
  yourMeter: 'Your meter',
  whichMeter: 'How exact is it? Its paper says more; until then, what is common for its kind:',
  whichMeterNote:
    'These figures are this project’s choice. Without a meter, readings count as from a survey meter.',
  addMeter: 'Another meter',
  describeMeter: 'Describe it by its paper',
  newMeter: (n: number) => (n === 0 ? 'My meter' : `Meter ${n + 1}`),
  name: 'Name',
  axesCount: 'Axes',
  oneAxis: 'one',
  threeAxes: 'three',
  meterUnit: 'Shows',
  percent: 'Accuracy, ± of the value',
  absolute: 'and ±',
  coverage: 'The accuracy is',
  limits: 'the most it is off',
  k2: '95 in 100 (k = 2)',
  coverageNote:
    'A meter’s paper mostly gives limits: the most a value may be off. A calibration certificate gives twice the standard uncertainty (k = 2): 95 values in 100 are off by less.',
  resolution: 'Last digit',
  rangeLow: 'Range from',
  rangeHigh: 'to',
  settle: 'Settles in',
  gain: 'Correction: true = shown ×',
  offset: 'plus',
  serial: 'Serial number',
  calibrated: 'Calibrated on',
  rounds: 'Rounds',
  addRound: 'Another round',
  roundKind: 'Condition',
  date: 'Date',
  roundNote: 'Note',
  groundsOffer: (n: number) =>
    `${countText(n, 'reading lies', 'readings lie')} outside every room: used, but not drawn.`,
  drawGrounds: (n: number) => (n === 1 ? 'Draw grounds round it' : 'Draw grounds round them'),
  noPlace: 'No place yet. Press the plan where you stand, or type how far across and up the page it is.',
  zeroIs: (least: string) => `0 is below the meter’s range: kept as under ${least}, not as no field.`,
  axesIncomplete: 'One axis is missing. Type all three of x, y and z, or go back to one value.',
  keepFile: (n: number) => `${countText(n, 'reading')} since you last kept a file.`,
  keepFileWord: 'Keep one now',
  notDate: (text: string) => `Not a date: “${text}”. Write it like 2026-03-02.`,
};

/** 'The map expects 0.04–0.10 here.', in two parts, since the interval is set in bold. */
export const expects = {
  before: 'The map expects ',
  after: ' here. ',
  interval: (low: number, high: number, unit: FieldUnit) => intervalText(low, high, unit),
  fits: 'Yours fits.',
  above: 'Yours lies above.',
  below: 'Yours lies below.',
  wasUnit: (unit: FieldUnit) => `Was that ${unitName(unit)}?`,
  farAbove: 'Yours lies far above. Is it right?',
  farBelow: 'Yours lies far below. Is it right?',
};

/** Asked once, before a value is kept that is like nothing read so far. */
export function doubtText(
  doubt: { kind: 'far-from-all' | 'beyond-meter'; most?: number; unit: FieldUnit | null },
  value: number,
  unit: FieldUnit,
): string {
  const shown = `${readingText(value, unit)} ${unitName(unit)}`;
  const start =
    doubt.kind === 'beyond-meter'
      ? `${shown} is more than the meter shows, ${withUnit(doubt.most ?? 0, unit)} at most.`
      : `Far from everything read here: ${shown}.`;
  return `${start} ${doubt.unit ? expects.wasUnit(doubt.unit) : 'Is it right?'}`;
}

/** A thin space that keeps its line: U+2060 after it, since a line may else break there. */
const KEPT = '\u2009\u2060';

/** Accuracies commonly met, percent and µT; this project's choice. */
export const METER_CHOICES = [
  { word: 'Pocket meter', percent: 25, absolute: 0.02, resolution: 0.01 },
  { word: 'Survey meter', percent: 10, absolute: 0.01, resolution: 0.01 },
  { word: 'Calibrated meter', percent: 5, absolute: 0.002, resolution: 0.001 },
] as const;

/** '±25 %' */
export const accuracyText = (percent: number): string => `±${percent}${KEPT}%`;

/** '±5 % ± 0.002 µT', and what that means where it is not the most it is off. */
export function meterNote(percent: number, absolute: string, coverage: 'limits' | 'k2'): string {
  return `${accuracyText(percent)} ±${KEPT}${absolute}${coverage === 'k2' ? `, ${survey.k2}` : ''}`;
}

/** Whether a meter reads true only after its correction. */
export const isCorrected = ({ gain, offset }: Pick<Meter, 'gain' | 'offset'>): boolean =>
  gain !== 1 || offset !== 0;

/** 'true = 0.93 × shown + 0.004', or none. */
export function correctionText(meter: Meter, unit: FieldUnit): string {
  if (!isCorrected(meter)) return 'none';
  const sign = meter.offset < 0 ? '−' : '+';
  const offset = meter.offset === 0 ? '' : ` ${sign} ${fieldText(Math.abs(meter.offset), unit)}`;
  return `true = ${fixedText(meter.gain, 3)} × shown${offset}`;
}

/** '0.49 read, 0.44 corrected', of a reading whose meter has a correction, µT. */
export const correctedText = (shown: number, corrected: number, unit: FieldUnit): string =>
  `${fieldText(shown, unit)} read, ${fieldText(corrected, unit)} corrected`;

/** 'low–high 0.10–0.30 µT', as far as they were noted. */
export function endsText(low: number | null, high: number | null, unit: FieldUnit): string {
  if (low !== null && high !== null)
    return `${survey.lowHigh} ${intervalText(low, high, unit)} ${unitName(unit)}`;
  if (low !== null) return `${survey.lowest} ${withUnit(low, unit)}`;
  return high === null ? '' : `${survey.highest} ${withUnit(high, unit)}`;
}

/** Where a reading stands, in its row. */
export function readingPlaceText(
  at: readonly [number, number],
  room: string | null,
  height: number,
  unit: LengthUnit,
): string {
  return `${room ?? placeText(at, unit)} · ${lengthText(height, unit, 1)}`;
}
