import type { RoomFigures } from '../engine/judging/rooms';
import type { FieldUnit, LengthUnit } from '../home/home';
import { edgeText } from './canvas';
import { lengthText, percentText, shareText, unitName } from './numbers';

export const judge = {
  title: 'Rooms against published values',
  intro: 'Rooms by the middle value of their floor, with its 90\u2009% interval. ',
  wordsFrom: 'Words from ',
  valuesOf: 'Published values: ',
  choose: 'Values to judge by',
  guideline: 'Set of values',
  target: 'Your target',
  targetHow: 'The chain line on plan and ruler. Drag its flag on the ruler, or type it here.',
  limit: 'limit',
  precaution: 'precautionary',
  study: 'studies',
  practice: 'trade practice',
  toSketch: 'Go to the sketch',
  speaksOf: (uses: readonly string[]) => `It speaks of rooms for: ${uses.join(', ')}.`,
  edge: (value: string, unit: string, above = false) => `${above ? 'above' : 'from'} ${value} ${unit}`,
  below: (percent: number) => `${percent}\u2009% of the floor is below`,
  highest: 'highest',
  highestNear: (what: string) => `highest, by ${what}`,
  piece: (name: string, hours: string) => `${name}, ${hours}`,
  hours: (n: string) => `${n} hours`,
  partly: (share: string) => `${share} of its floor is drawn`,
  noRooms: 'No room is drawn yet. Judging needs rooms: sketch them, or draw grounds round the readings.',
  noMap: 'There is no map to judge by yet.',
  sections: 'Sections along walks',
  section: (letter: string, name: string) => `Section ${letter}–${letter}′${name ? `, ${name}` : ''}`,
  noWalk:
    'A walk laid across the plan shows a section here: how the field falls, and where the target is met.',
  met: 'Target met ',
  along: (name: string) => ` along ${name || 'the walk'}`,
  beyond: 'further than the walk',
  notMet: 'The target is not met to stay along this walk.',
  falloff: {
    before: 'Falls with distance from the source about as 1/r',
    after: (sd: string) => ` (±\u2009${sd} in the power).`,
  },
  cautions: 'Cautions',
};

const NUMBERS = ['No', 'One', 'Two', 'Three', 'Four', 'Five', 'Six', 'Seven', 'Eight', 'Nine'];

const spelt = (count: number): string => NUMBERS[count] ?? String(count);

/** How many rooms inside the walls are judged, lie over the target or cannot be told, and how many of those over it are for sleeping. */
export interface RoomCounts {
  judged: number;
  over: number;
  untold: number;
  sleeping: number;
}

/** 'Three rooms' and ' lie over your target of 0.1 µT, one of them for sleeping; two cannot be told.' */
export function overSentence(
  { judged, over, untold, sleeping }: RoomCounts,
  target: number,
  unit: FieldUnit,
): { bold: string; rest: string } {
  const aim = `your target of ${edgeText(target, unit)} ${unitName(unit)}`;
  if (judged === 0) return { bold: 'No room', rest: ' has enough of its floor drawn to be judged.' };
  if (over === 0 && untold === 0)
    return { bold: judged === 1 ? 'The one room judged' : 'Every room judged', rest: ` lies under ${aim}.` };
  if (untold === judged && judged === 1)
    return { bold: 'The one room judged', rest: ` lies so near ${aim} that over or under cannot be told.` };
  const open = untold > 0 ? `; ${spelt(untold).toLowerCase()} cannot be told` : '';
  if (over === 0) return { bold: 'No room', rest: ` surely lies over ${aim}${open}.` };
  return {
    bold: `${spelt(over)} ${over === 1 ? 'room' : 'rooms'}`,
    rest: ` ${over === 1 ? 'lies' : 'lie'} over ${aim}${sleepingText(over, sleeping)}${open}.`,
  };
}

function sleepingText(over: number, sleeping: number): string {
  if (sleeping === 0) return ', none for sleeping';
  if (sleeping === over) return over === 1 ? ', and is for sleeping' : ', all for sleeping';
  return `, ${spelt(sleeping).toLowerCase()} of them for sleeping`;
}

/** A share of the floor as people say it. */
function shareWords(share: number): string {
  if (share <= 0) return 'None of the floor';
  if (share < 0.08) return 'Hardly any of the floor';
  if (share < 0.2) return 'A small part of the floor';
  if (share < 0.3) return 'A quarter of the floor';
  if (share < 0.42) return 'A third of the floor';
  if (share < 0.58) return 'Half the floor';
  if (share < 0.72) return 'Two thirds of the floor';
  if (share < 0.9) return 'Most of the floor';
  if (share < 1) return 'Nearly all of the floor';
  return 'All of the floor';
}

/** Where a piece stands within its room: 'the bed stands in the worst of it'. */
function standsWords(name: string, mean: number, figures: RoomFigures): string {
  const lower = name.charAt(0).toLowerCase() + name.slice(1);
  if (mean >= (figures.median + 2 * figures.p95) / 3) return `the ${lower} stands in the worst of it`;
  if (mean > figures.median) return `the ${lower} stands in its upper half`;
  return `the ${lower} stands in its lower half`;
}

/** 'Most of the floor lies over your target of 0.1 µT: 74 % (46–94); the bed stands in the worst of it.' */
export function roomSentence(
  figures: RoomFigures,
  target: number,
  unit: FieldUnit,
  piece: { name: string; mean: number } | null,
): string {
  const aim = `your target of ${edgeText(target, unit)} ${unitName(unit)}`;
  const { overTarget, overTargetLow, overTargetHigh } = figures;
  const share = shareText(overTarget, overTargetLow, overTargetHigh);
  const floor = `${shareWords(overTarget)} lies over ${aim}: ${share}`;
  return piece ? `${floor}; ${standsWords(piece.name, piece.mean, figures)}.` : `${floor}.`;
}

/** '2.3 m' and '(1.3–3.3)' of where a target is met along a walk. */
export function metText(
  [low, best, high]: readonly [number, number, number | null],
  unit: LengthUnit,
): { best: string; interval: string } {
  const [from, to] = [lengthText(low, unit, 1), high === null ? judge.beyond : lengthText(high, unit, 1)];
  // The unit stands once, after the best value.
  const bare = (text: string) => (unit === 'm' ? text.replace(/ m$/, '') : text);
  return { best: lengthText(best, unit, 1), interval: `(${bare(from)}–${bare(to)})` };
}

export const partlyText = (share: number): string => judge.partly(percentText(share));

/** A tick of the section's scale. */
export const sectionTick = (value: number, unit: FieldUnit): string => edgeText(value, unit);
