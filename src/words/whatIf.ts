import type { Decision } from '../engine/arranging/arrange';
import type { SourceChange } from '../engine/whatIf/sourceChange';
import type { ArrangementWorth, ComparedArrangement } from '../engine/whatIf/compareArrangements';
import type { Arrangement, FieldUnit, Home, Id } from '../home/home';
import { TRIED, type ArrangementRow, type Differences } from '../home/questions/arrangementRows';
import { doseText, doseUnitName, intervalText, oddsText } from './numbers';
import { changeText, listed, sourceName, SOURCE_STATES } from './supposed';
import { furnitureName, lowerFirst, roomName, ROOM_USES } from './things';

export const openPlanWords = {
  label: 'Sleep in any room',
  note: 'Living rooms and rooms to work in are tried for beds and cots too.',
};

export const whatIfWords = {
  title: 'What if a source were off?',
  none: 'No source is marked. Mark the street line, the meter cupboard or an appliance in the sketch, and its share of the map can be taken away here.',
  toSketch: 'Go to the sketch',
  ...SOURCE_STATES,
  moved: 'moved',
  drag: 'Drag it on the plan, move it there with the arrow keys, or say how far.',
  across: 'To the right',
  up: 'Up the page',
  end: 'The map as it is',
  drawing: 'Drawing the map as it would be…',
  methods: 'Draw the map by',
  lines:
    'Source kriging can hardly tell a line from the background: what is left without it may be further off than the map as it is.',
  sampling: 'Draw the map by source sampling to trust this.',
  falls: 'The home as a whole, a day',
  caution:
    'It tells what the map gives to a source, not how to be rid of it. Open no panel and touch no wiring; lines, cables and transformers are the network operator’s.',
};

export const keptWords = {
  title: 'Arrangements',
  none: 'Keep how the furniture stands, or an answer that is shown, under a name, and compare them here.',
  foundNow: 'As found, and now',
  now: 'Now',
  tried: 'Now, as tried',
  name: 'Keep under the name',
  keepNow: 'Keep how it stands',
  keepAnswer: 'Keep the answer shown',
  keepSupposed: 'Keep as an arrangement',
  keptAs: (name: string) =>
    `Kept as ${name}, beside the other arrangements below. To use its places, choose Use there.`,
  word: 'Arrangement',
  use: 'Use',
  rename: 'Name',
  remove: 'Remove',
  try: 'See its map',
  sources: 'Its furniture is used; its sources stay as they are.',
  sideBySide: 'Side by side',
  whole: 'Whole home',
  working: 'Comparing…',
  notMeasured: 'not measured',
  unmeasured:
    'Where a source is off, weaker or elsewhere the dose is what would be by the map, and not measured. It tells what the map gives to a source, not how to be rid of it.',
  apart: 'How likely it is lower cannot be told by this method; source sampling could.',
  noDose: 'Nobody uses a piece yet.',
  same: 'the same places',
  differs: 'What differs',
  chance: (first: string) => `Lower than ${first.toLowerCase()}`,
};

/** 'Sitting room becomes a room to sleep in.'; empty where no room changes its use. */
export function usesSentence(home: Home, rooms: Arrangement['rooms']): string {
  if (rooms.length === 0) return '';
  const names = listed(rooms.map(({ id }) => roomName(home, id)));
  return rooms.length === 1 ? `${names} becomes a room to sleep in.` : `${names} become rooms to sleep in.`;
}

/** How far an answer holds that was made on a map as it would be: 'This holds only with the street line off, as tried. The source itself stays on.' */
export function supposedAnswerSentence(
  home: Home,
  changes: readonly SourceChange[],
  decision: Decision,
): string {
  const tried = listed(
    changes.map((change) => `the ${lowerFirst(sourceName(home, change.id))} ${changeText(home, change)}`),
  );
  const holds = decision === 'stay' ? 'There is no clear gain' : 'This holds only';
  const many = changes.length > 1;
  const stays = changes.every(({ scale }) => scale === 0) ? 'on' : many ? 'as they are' : 'as it is';
  return `${holds} with ${tried}, as tried. ${many ? `The sources themselves stay ${stays}` : `The source itself stays ${stays}`}.`;
}

/** Sources that are changed in vain. */
export const unheardSentence = (home: Home, ids: readonly Id[]): string =>
  ids.length === 0
    ? ''
    : `The readings give nothing to ${listed(ids.map((id) => `the ${lowerFirst(sourceName(home, id))}`))}: the map stays as it is.`;

/** What an arrangement is called: as found, now, as it is tried, or by its name. */
export function arrangementTitle({
  id,
  name,
  isFirst,
}: Pick<ArrangementRow, 'id' | 'name' | 'isFirst'>): string {
  if (name !== null) return name || keptWords.word;
  if (id === TRIED) return keptWords.tried;
  return isFirst ? keptWords.foundNow : keptWords.now;
}

/** What an arrangement has otherwise than the first: 'Bed and desk moved · Street cable off · Sitting room: sleeping'. */
export function differsText(home: Home, { pieces, sources, rooms }: Differences): string {
  const moved = listed(
    pieces.map((id, i) => (i === 0 ? furnitureName(home, id) : lowerFirst(furnitureName(home, id)))),
  );
  const parts = [
    moved && `${moved} moved`,
    ...sources.map((change) => `${sourceName(home, change.id)} ${changeText(home, change)}`),
    ...rooms.map(({ id, use }) => `${roomName(home, id)}: ${ROOM_USES[use]}`),
  ].filter(Boolean);
  return parts.join(' · ') || keptWords.same;
}

export interface DoseParts {
  value: string;
  interval: string;
  unit: string;
}

/** '1.9', '(1.5–2.4)', 'µT·h' */
export const doseParts = (dose: { dose: number; low: number; high: number }, unit: FieldUnit): DoseParts => ({
  value: doseText(dose.dose, unit),
  interval: `(${intervalText(dose.low, dose.high, unit)})`,
  unit: doseUnitName(unit),
});

/** 'lower: 96 %', 'higher: 99 %' than the first; empty where nothing differs or it cannot be told. */
export function chanceText(
  { dose, odds }: { dose: { dose: number } | null; odds: number | null },
  first: { dose: number } | null,
): string {
  if (odds === null || !dose || !first) return '';
  // What no digit shows is not said to be likely.
  if (doseText(dose.dose, 'uT') === doseText(first.dose, 'uT')) return '';
  return dose.dose <= first.dose ? `lower: ${oddsText(odds)}` : `higher: ${oddsText(1 - odds)}`;
}

/** The doses of an arrangement, where the map can tell any. */
export const worthOf = (compared: ComparedArrangement | null): ArrangementWorth | null =>
  compared && !('without' in compared) ? compared : null;
