import type { Method } from '../engine/mapping/choose';
import type { Evidence, EvidenceRow } from '../engine/mapping/fitSurvey';
import { isInside } from '../engine/mapping/secondLook';
import type { Pull } from '../engine/pulls';
import { usualCounts } from '../engine/survey/usualCounts';
import type { FieldUnit, Home } from '../home/home';
import { roomAt } from '../home/questions/roomAt';
import { methodName } from './assessment';
import { countText, factorText, fixedText, intervalText, percentText, unitName, withUnit } from './numbers';
import { correctedText } from './survey';
import { numberOf, roomName } from './things';

export const evidenceWords = {
  plot: 'Each reading against what the others predict for it',
  across: (unit: FieldUnit) => `across: predicted, ${unitName(unit)}`,
  up: (unit: FieldUnit) => `up: read, ${unitName(unit)}`,
  twice: 'read twice as much',
  half: 'read half as much',
  inside: 'inside',
  outside: 'outside its interval',
  second: 'worth a second look',
  press: 'Press a reading to see it on the plan.',
  keys: 'Arrow keys step through the readings.',
  none: 'no reading chosen',
  pullTitle: 'What the map leans on',
  pullHow:
    'How much the map would change, on average over its drawn floor, if the reading were left out and nothing else chosen anew. Where much hangs on one reading, read there again.',
  pullOther: (method: Method) =>
    `Sampled sources would have to be sampled anew: this is the map of ${methodName(method)}, which is there at once.`,
  lookTitle: 'Worth a second look',
  lookHow: 'Missed by more than chance explains. They are used like all others until you decide otherwise.',
  open: 'Open the reading',
  mark: 'Mark a source',
  leaveOut: 'Leave it out, because',
  leaveOutHint: 'then it is struck, and may come back',
  predicted: 'predicted (90\u2009%)',
  pull: 'pull',
  pullColumn: 'Pull: how much leaving the reading out changes the map, on average over its floor.',
} as const;

/** 'Reading 12', 'Readings 12, 13' of one place. */
export const rowName = ({ ids }: Pick<EvidenceRow, 'ids'>): string =>
  `Reading${ids.length > 1 ? 's' : ''} ${ids.map(numberOf).join(', ')}`;

/** The room a reading lies in; '' outside every one. */
export function rowRoom(home: Home, { level, at }: Pick<EvidenceRow, 'level' | 'at'>): string {
  const room = roomAt(home, level, at);
  return room ? roomName(home, room.id) : '';
}

/** A reading of the plot, in a sentence; `shown` is what the display showed where the meter's correction makes it another. */
export function rowText(row: EvidenceRow, room: string, unit: FieldUnit, shown: number | null): string {
  const where = room ? ` (${room})` : '';
  return `${rowName(row)}${where}: ${readText(row.read, shown, unit)}, ${withUnit(row.predicted, unit)} predicted (${intervalText(row.low, row.high, unit)}), ${isInside(row) ? 'inside' : 'outside'}.`;
}

/** '0.49 read, 0.44 corrected', or '0.44 µT read' where the display is taken as it is. */
const readText = (corrected: number, shown: number | null, unit: FieldUnit): string =>
  shown === null ? `${withUnit(corrected, unit)} read` : correctedText(shown, corrected, unit);

/** Less than this share is no change that anybody sees. */
const HARDLY = 0.005;

/** What the map would be without a reading: 'Without it the map would change by 8 % on average, most in: Kitchen (23 % lower).' */
export function pullSentence({ by, change, room, roomChange }: Pull, home: Home): string {
  if (Math.expm1(change) < HARDLY) return `Without it ${mapOf(by)} would hardly change.`;
  const told = home.rooms[room] && Math.abs(Math.expm1(roomChange)) >= HARDLY;
  const most = told ? `, most in: ${roomName(home, room)} (${changeText(roomChange)})` : '';
  return `Without it ${mapOf(by)} would change by ${pullText(change)} on average${most}.`;
}

/** 'the map', or whose map it is where another is drawn. */
const mapOf = (by: Pull['by']): string => (by ? `the map of ${methodName(by)}` : 'the map');

/** '8 %', or 'a factor of 2.4': a root mean square of changes of ln B. */
export const pullText = (change: number): string =>
  change < Math.LN2 ? percentText(Math.expm1(change)) : `a factor of ${factorText(change)}`;

/** Beside a reading's pull: 'Kitchen · Back garden 2 % lower', 'Bedroom · 5 % lower there'. */
export function pullNote(row: EvidenceRow, { room, roomChange }: Pull, home: Home): string {
  const own = rowRoom(home, row);
  const most = home.rooms[room] ? roomName(home, room) : '';
  const change = most === own ? `${changeText(roomChange)} there` : `${most} ${changeText(roomChange)}`;
  return [own, most ? change : ''].filter(Boolean).join(' · ');
}

/** Said where no reading moves the map by much; `most`: the largest pull. */
export const noneLeansText = ({ by, change }: Pull): string =>
  `On no single reading: whichever is left out, ${mapOf(by)} changes by ${pullText(change)} or less on average.`;

/** A change of ln B that is worth a reading's name. */
export const LEANS = Math.log(1.03);

/** '23 % lower', '2.4 times as high' */
export function changeText(change: number): string {
  if (change >= Math.LN2) return `${fixedText(Math.exp(change), 1)} times as high`;
  return change < 0
    ? `${percentText(-Math.expm1(change))} lower`
    : `${percentText(Math.expm1(change))} higher`;
}

/** What is asked about a reading that the others do not explain; `meant`: the unit in which the same figures would fit. */
export function lookSentence(row: EvidenceRow, unit: FieldUnit, meant: FieldUnit | null): string {
  const said = `The other readings expect ${intervalText(row.low, row.high, unit)} ${unitName(unit)} here.`;
  if (meant) return `${said} Was that ${unitName(meant)}?`;
  return row.read > row.high
    ? `${said} A source nearby, a typing slip, or an appliance that was on? Read it again, or mark the source.`
    : `${said} A typing slip, a display that had not settled, or a source near the readings round it? Read it again.`;
}

/** Which readings deserve a second look; '' where none does. */
export function looksSentence(looks: readonly EvidenceRow[], home: Home): string {
  if (looks.length === 0) return '';
  const names = looks.map((row) => [row.ids.map(numberOf).join(', '), rowRoom(home, row)]);
  const list = names.map(([number, room]) => (room ? `${number} (${room})` : number)).join(', ');
  return `Worth a second look, since missed by more than chance explains, and used all the same: ${looks.length > 1 ? 'readings' : 'reading'} ${list}.`;
}

/** Which reading the map leans on most, if on any; '' where that cannot be told. */
export function leansSentence(
  rows: readonly EvidenceRow[],
  pulls: readonly (Pull | null)[],
  home: Home,
): string {
  const i = pulls.reduce(
    (best, pull, k) => ((pull?.change ?? -1) > (pulls[best]?.change ?? -1) ? k : best),
    0,
  );
  const most = pulls[i];
  if (!most) return '';
  if (most.change < LEANS) return `The map leans ${lowered(noneLeansText(most))}`;
  return `What the map leans on most: ${rowName(rows[i]!)}. ${pullSentence(most, home)}`;
}

const lowered = (sentence: string): string => sentence.charAt(0).toLowerCase() + sentence.slice(1);

/** Under so many counted, the share inside the interval tells nearly nothing. */
const FEW = 12;

/** 'about 32 expected' of 36 intervals of 90 %. */
export const expectedText = (all: number): string => `about ${Math.round(0.9 * all)} expected`;

/** '31 of 36 lie inside their 90 % interval (about 32 expected).' */
const insideSentence = (inside: number, all: number): string =>
  `${inside} of ${all} lie inside their 90\u2009% interval (${expectedText(all)}).`;

/** What so many inside their interval say of the intervals: by which counts are no surprise where those are right. */
export function coverageSentence(inside: number, all: number): string {
  const { fewest, most } = usualCounts(all, 0.9);
  if (inside < fewest)
    return `Fewer than ${fewest} is more than bad luck: the intervals here are too narrow. Trust them less.`;
  if (inside > most)
    return `More than ${most} is more than good luck: the intervals here are wider than they need be.`;
  if (all < FEW) return 'So few readings cannot show whether the intervals are right.';
  return `Anything from ${fewest} to ${most} is no surprise: the intervals here are about as wide as they should be.`;
}

/** How many of the rows lie inside their interval. */
const insideCount = (rows: readonly EvidenceRow[]): number => rows.filter(isInside).length;

/** Why the map may be believed, or not: each reading was predicted without itself. `taken`: ' with the House meter'. */
export function evidenceSentences({ readings, looRmseLn, rows }: Evidence, taken = ''): string[] {
  const read = `${countText(readings, 'reading')}${taken}`;
  if (looRmseLn === null || rows.length === 0)
    return [`${read}, too far apart or too few for any to be predicted from the others.`];
  const inside = insideCount(rows);
  return [
    `${read}. Each was predicted without itself: the typical miss was a factor of ${factorText(looRmseLn)}.`,
    `${insideSentence(inside, rows.length)} ${coverageSentence(inside, rows.length)}`,
  ];
}
