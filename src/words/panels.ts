import type { FieldUnit, LengthUnit } from '../home/home';
import { BAND_EDGES } from '../engine/contours/thresholds';
import { supportSentence, type SupportReason } from './assessment';
import {
  countText,
  factorText,
  fieldText,
  intervalText,
  lengthText,
  percentText,
  unitName,
  withUnit,
} from './numbers';

/** The page round the plan: top line, stages, foot line, sheet. */
export const shell = {
  product: 'Stillroom',
  close: 'close',
  undo: 'undo',
  redo: 'redo',
  homes: 'homes',
  title: 'Name of this home',
  level: 'Level',
  round: 'Round',
  noRound: 'no round yet',
  height: 'Height of the map above the floor',
  heightWord: 'height',
  stages: 'Stages of the job',
  plan: 'Plan',
  ruler: 'Field ruler',
  closer: 'closer',
  wider: 'wider',
  wholeHome: 'whole home',
  keys: 'keys',
  units: 'units',
  addLevel: 'Another level',
  sheet: 'Height of the sheet',
  sheetRests: ['one sentence', 'half', 'whole'],
  cancel: 'cancel',
  stop: 'stop',
  dismiss: 'dismiss',
  drawing: 'Drawing the map again.',
  readOnly: 'Another tab writes this home; here it can only be read.',
  takeOver: 'Write here instead',
  eachMark: (unit: LengthUnit) =>
    unit === 'm'
      ? 'The marks on the edge count metres.'
      : 'The marks on the edge count metres; lengths are in feet.',
  newer: 'A newer version is ready.',
  reload: 'Reload',
} as const;

export const STAGE_WORDS = {
  sketch: 'sketch',
  survey: 'survey',
  map: 'map',
  judge: 'judge',
  arrange: 'arrange',
  report: 'report',
} as const;

/** What is known of the field at a place. */
interface AtPlace {
  at: readonly [number, number];
  value: number | null;
  low: number | null;
  high: number | null;
  supported: boolean;
  reason: SupportReason | null;
  nearest: number | null;
}

export function numberSentence(text: string): string {
  return `Not a number: “${text.trim()}”. Write it like 8 or 7,5.`;
}

export function countSentence(text: string, low: number, high: number): string {
  return `“${text.trim()}” is out of bounds. Write a number from ${low} to ${high}.`;
}

/** '8.10 m across, 2.10 m up' the page from the plan's zero, whichever way north lies. */
export function placeText(at: readonly [number, number], unit: LengthUnit): string {
  return `${lengthText(at[0], unit)} across, ${lengthText(at[1], unit)} up`;
}

/** The field under the pointer, or why there is none. */
export function probeText(probe: AtPlace, field: FieldUnit, length: LengthUnit): string {
  const place = placeText(probe.at, length);
  if (probe.value === null || !probe.supported) {
    if (probe.reason === null) return place;
    return `${place} · ${supportSentence(probe.reason, probe.nearest, length)}`;
  }
  const interval =
    probe.low !== null && probe.high !== null ? ` (${intervalText(probe.low, probe.high, field)})` : '';
  return `${place} · ${withUnit(probe.value, field)}${interval}`;
}

/** 'band 0.3–0.5 µT lit' */
export function litBandText(band: number, unit: FieldUnit): string {
  const name = unitName(unit);
  if (band < 0) return `ground below ${fieldText(BAND_EDGES[0]!, unit)} ${name} lit`;
  const low = BAND_EDGES[band]!;
  const high = BAND_EDGES[band + 1];
  return high === undefined
    ? `ground of ${fieldText(low, unit)} ${name} or more lit`
    : `band ${fieldText(low, unit)}–${fieldText(high, unit)} ${name} lit`;
}

/** One line on what the map rests on; in full where there is room. */
export function evidenceLine(
  readings: number,
  method: string,
  looRmseLn: number | null,
  full: boolean,
): string {
  const start = `${countText(readings, 'reading')}, ${method}`;
  if (looRmseLn === null) return `${start}.`;
  const within = `typically within a factor of ${factorText(looRmseLn)}.`;
  return full ? `${start}. Each one predicted without itself: ${within}` : `${start}: ${within}`;
}

/** What the ink round a piece at hand means; or that it has no place at its angle. */
export function areaLine(piece: string, hasPlace: boolean, cautious: boolean): string {
  if (!hasPlace) return `Turned like this ${piece} fits nowhere. R turns it.`;
  const field = cautious ? 'upper end of the mean field' : 'mean field';
  return `Ink in the dotted area: ${field} of ${piece} with its middle there. Dashed: within 5\u2009% of the least.`;
}

/** Said beside the map that was there at once, while a better one is sought. */
export const samplingLine = (share: number): string => `Sampling sources, ${percentText(share)}:`;

export const savedText = {
  saved: (time: string) => `Saved on this device, ${time}`,
  savedPlain: 'Saved on this device',
  saving: 'Saving…',
  failed: 'Not saved.',
};

export const tally = {
  startHere: 'start here',
  noReadings: 'no readings',
  rooms: (n: number) => countText(n, 'room'),
  readings: (n: number) => countText(n, 'reading'),
  drawn: (percent: string) => `${percent} drawn`,
  over: (n: number, untold: number) =>
    untold === 0
      ? n === 0
        ? 'none over target'
        : `${n} over target`
      : `${n === 0 ? 'none' : n} over, ${untold} untold`,
  pieces: (n: number) => countText(n, 'piece'),
  noPieces: 'no pieces',
  notDated: 'not dated',
};

export const keysHelp = {
  title: 'Keys',
  rows: [
    ['Tab', 'next thing: words, rows, plan, ruler'],
    ['Arrows', 'move what is selected by 5 cm, with Shift by 50 cm; on the ruler, step the bands'],
    ['R', 'turn the piece a quarter; Shift+R the other way'],
    ['Double click', 'on a wall of what is selected: a corner there; on a corner: gone'],
    ['Delete', 'take away what is selected'],
    ['Ctrl+D', 'one more of the same'],
    ['Ctrl+Z, Ctrl+Shift+Z', 'undo, redo; while an outline is drawn, its last corner first'],
    ['Enter', 'keep the reading; close the outline'],
    ['Escape', 'leave the tool, take back the gesture, select nothing'],
    ['+  −  0', 'closer, wider, whole home'],
    ['Space and drag', 'move the sheet'],
    ['1 … 6', 'the six stages'],
    ['?', 'this list'],
  ] as readonly (readonly [string, string])[],
};

export const unitsDialog = {
  title: 'Units and light',
  field: 'Field',
  length: 'Lengths',
  metres: 'metres',
  feet: 'feet, inches',
  mains: 'Mains',
  hertz: (n: number) => `${n} Hz`,
  light: 'Light',
  auto: 'as the device',
  lightWord: 'light',
  darkWord: 'dark',
};

export const homesDialog = {
  title: 'Homes on this device',
  new: 'A new home',
  openFile: 'Open a home file',
  saveFile: 'Keep a file of this home',
  samples: 'Sample homes, invented',
  current: 'open now',
  remove: 'remove',
  removeSure: (title: string) => `Remove “${title}” from this device? A file of it stays yours.`,
  removeYes: 'Remove it',
  removeNo: 'Leave it',
  savedAt: (when: string) => `saved ${when}`,
  unkept: (n: number) =>
    n === 0
      ? 'Browsers may clear what they store: keep a file too.'
      : `${countText(n, 'reading')} since you last kept a file. Browsers may clear what they store: keep a file too.`,
  nothingLeaves: 'Nothing you enter leaves this device.',
};

export const SAMPLES = [
  {
    key: 'terraced-house',
    title: 'Terraced house by a street line',
    note: 'with its garden; sources, four pieces',
  },
  { key: 'one-bedroom-flat', title: 'One-bedroom flat', note: 'a net current runs in a wall' },
  { key: 'single-bedroom', title: 'Single bedroom', note: 'twelve readings' },
] as const;

export type SampleKey = (typeof SAMPLES)[number]['key'];

/** What the drawn arrow between an old and a new figure is read as. */
export const arrowWord = 'becomes';
