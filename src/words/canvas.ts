import type { FieldUnit, Home, Id, LengthUnit, Reading, Room } from '../home/home';
import { inOrder } from '../home/order';
import { fieldText, fixedText, inUnit, lengthText, percentText } from './numbers';
import { PIECE_WORDS } from './things';

/** The letter of every piece that somebody uses, as on its disc: A, B … Z, AA. */
export function pieceLetters(home: Pick<Home, 'pieces'>): Record<Id, string> {
  const used = inOrder(home.pieces).filter((piece) => piece.uses.length > 0 || piece.kind !== 'other');
  return Object.fromEntries(used.map((piece, i) => [piece.id, letter(i)]));
}

function letter(index: number): string {
  const last = String.fromCharCode(65 + (index % 26));
  return index < 26 ? last : letter(Math.floor(index / 26) - 1) + last;
}

/** 'bed A': a piece by its kind and the letter on its disc. */
export function pieceShort(home: Home, id: string): string {
  const piece = home.pieces[id];
  if (!piece) return id;
  const letter = pieceLetters(home)[id];
  return [PIECE_WORDS[piece.kind].toLowerCase(), letter].filter(Boolean).join(' ');
}

/** A value as it stands on a contour or beside the ruler: no trailing zeros, since it is exact. */
export function edgeText(microtesla: number, unit: FieldUnit): string {
  return String(Number(inUnit(microtesla, unit).toPrecision(3))).replace('-', '−');
}

/** A room's name as it stands on the plan: capitals indoors, as written for grounds. */
export function planName(room: Room): string {
  return room.use === 'grounds' ? room.name : room.name.toUpperCase();
}

/** '0 m', '2', '0.5': a numeral under the frame; the unit stands at the plan's zero only. */
export function metreText(metres: number): string {
  const text = fixedText(metres, Number.isInteger(metres) ? 0 : 1);
  return metres === 0 ? '0 m' : text;
}

/** 'Front bedroom selected', '3 things selected: …' */
export function selectionText(names: readonly string[]): string {
  if (names.length === 1) return `${names[0]} selected`;
  return `${names.length} things selected: ${names.join(', ')}`;
}

export const canvasWords = {
  sheet: 'The plan',
  keys: 'Arrow keys move what is selected, or the plan where nothing is. Plus and minus come closer and go wider. Escape lets go. Everything on the plan is also in the lists beside it.',
  nothingSelected: 'Nothing selected',
  /** Instead of a room's value. */
  notJudged: (supported: number) => (supported < 0.005 ? 'no readings' : `${percentText(supported)} drawn`),
  noEstimate: 'No estimate here',
  north: 'N',
  ruler: 'The field ruler',
  target: 'Target',
  targetShort: 'target',
  moveTarget: 'Move the target',
  emptyRuler: ['Your readings', 'will ink this', 'ruler and the', 'plan alike.'],
  firstRoom: 'Drag out the first room',
  firstRoomNote: 'roughly right is enough to begin',
};

/** '0.14', '<0.02' below the meter's range, '>200' above it. */
export function readingLabel(reading: Reading, unit: FieldUnit, resolution: number): string {
  const text = fieldText(reading.value, unit, resolution);
  if (reading.limit === null) return text;
  return `${reading.limit === 'below' ? '<' : '>'} ${text}`;
}

/** The letter of a section: A, B, … */
export const sectionLetter = (index: number): string => letter(index);

/** 'nearest reading 1.0 m' */
export const nearestText = (metres: number, unit: LengthUnit): string =>
  `nearest reading ${lengthText(metres, unit, 1)}`;

const TORN_NAMES: Record<string, string> = { 'icnirp-2010': 'ICNIRP 2010', 'eu-1999': 'EU 1999' };

/** What a reference value above the ruler's break is called. */
export const tornName = (guideline: Id): string => TORN_NAMES[guideline] ?? guideline;

/** A phrase broken into lines of no more than so many letters; a longer word stands alone. */
export function wordLines(phrase: string, letters: number): string[] {
  const lines: string[] = [];
  for (const word of phrase.split(' ')) {
    const last = lines[lines.length - 1];
    if (last !== undefined && last.length + 1 + word.length <= letters)
      lines[lines.length - 1] = `${last} ${word}`;
    else lines.push(word);
  }
  return lines;
}
