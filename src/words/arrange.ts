import type { Answer, PlacedPiece } from '../engine/arranging/arrange';
import type { Worth } from '../engine/arranging/compare';
import type { FieldUnit, Home, PieceKind } from '../home/home';
import { roomAt } from '../home/questions/roomAt';
import { changeText, isLower, leadOf } from './arranging';
import { wholeName } from './furniture';
import { countText, doseText, doseUnitName, intervalText } from './numbers';
import { PIECE_WORDS, thingName } from './things';

export const arrange = {
  title: 'Where bed and desk go',
  lead: 'Every place along the walls of every suitable room is tried, and the one with the least dose is shown, inside the rules of a livable room.',
  nothing: 'No bed, cot or desk stands on the plan yet. Put one there, with who uses it and for how long.',
  toSketch: 'Go to the sketch',
  noMap: 'There is no map to arrange on yet.',
  /** How many readings a map takes, and how many there are. */
  mapTakes: (need: number, have: number) =>
    `There is no map to arrange on yet. It takes ${countText(need, 'reading')}${have > 0 ? `; this round has ${have}` : ''}.`,
  allStay: 'Nothing may move: every piece that is used is to stay.',
  nobodyUses:
    'Nobody uses a bed, cot or desk yet, so there is no dose to lower: say below who does, and for how long.',
  letsGo: 'A change here works the answer out anew; what you put by hand is let go.',
  work: 'Work it out',
  again: 'Work it out again',
  working: 'Trying places…',
  waits: 'The map is being sampled; places are tried by themselves once it stands.',
  sampled: 'The map is being sampled: work it out once it stands.',
  cancel: 'Cancel',
  take: 'Take this arrangement',
  leave: 'Leave as is',
  taken: 'Taken',
  movedSince: 'Furniture moved',
  undoTakes: 'One undo brings it back.',
  reportTells: 'The report tells this change against how the furniture was found.',
  asFoundNow: 'Each piece: as found, and now.',
  moves: 'moves',
  toLevel: (room: string, level: string) => ` to ${[room, level].filter(Boolean).join(', ')}`,
  moved: 'moved',
  stays: 'stays',
  lockedWord: 'stays, as you asked',
  noHours: 'nobody uses it',
  stale: 'The home or its map has changed since.',
  show: 'show on the plan',
  whole: (dose: string) => `${dose} for the home as a whole`,
  rooms: (name: string) => `Which room for ${name}`,
  standsNow: (dose: string) => `stands there now${dose && `: ${dose}`}`,
  atBest: 'at best',
  proposedThere: 'in this answer',
  people: 'People and hours',
  gains: 'Each person, a day',
  putByHand: 'put there by you',
  byHand: 'As you put it',
  noMapThere: 'Where no map is drawn no gain is told.',
  judging: 'Its dose is being worked out.',
  breaksRules: 'Where a rule is broken, it is your choice to leave it so.',
  toPlanner: 'Back to the planner’s places',
  uncertain: (name: string) =>
    ` The ${name.toLowerCase()} gains less than the readings leave open: that gain is not certain.`,
  falls: ' falls from ',
  rises: ' rises from ',
  fell: ' fell from ',
  rose: ' rose from ',
  to: ' to ',
  picture: (room: string) => `Small plan: ${room}`,
};

/** 'The double bed, across the room'; what the answer does, in one line. */
export function answerTitle(home: Home, answer: Answer, about: string | null): string {
  const lead = leadOf(answer, about) ?? answer.pieces.find(({ moves }) => moves);
  if (!lead) return 'Everything stays';
  const name = thingName(home, { kind: 'piece', id: lead.id });
  const here = home.pieces[lead.id];
  const room = thingName(home, { kind: 'room', id: lead.room });
  const from = roomOf(home, lead.id);
  const where = from === lead.room ? 'across the room' : `in ${room}`;
  const turned =
    from === lead.room && here && Math.hypot(here.at[0] - lead.at[0], here.at[1] - lead.at[1]) < 0.6;
  return `${name}, ${turned ? 'a little aside' : where}`;
}

/** Why no place can be looked for; empty where one can. */
export function restSentence({ pieces }: Pick<Home, 'pieces'>): string {
  const used = Object.values(pieces).filter(({ uses }) => uses.length > 0);
  if (used.length === 0) return arrange.nobodyUses;
  return used.every(({ locked }) => locked) ? arrange.allStay : '';
}

function roomOf(home: Home, id: string): string | null {
  const piece = home.pieces[id];
  return piece ? (roomAt(home, piece.level, piece.at)?.id ?? null) : null;
}

/** '1.9', '0.64', '(1.8–2.1)', '(0.55–0.76)' of a piece or a person. */
export function doseParts(worth: Pick<Worth, 'before' | 'after'>, unit: FieldUnit) {
  const text = (dose: Worth['before']) =>
    dose
      ? {
          value: doseText(dose.dose, unit),
          interval: `(${intervalText(dose.low, dose.high, unit)})`,
        }
      : null;
  return { before: text(worth.before), after: text(worth.after), unit: doseUnitName(unit) };
}

/** A gain of a piece's own that the readings do not make certain. */
export const gainUncertain = (placed: PlacedPiece): boolean => isLower(placed) && placed.decision !== 'move';

/** 'The home as a whole, mean over its 2 people: 2.1 to 0.64 µT·h.'; null where one piece is the whole. */
export function wholeSentence(home: Home, answer: Answer): string | null {
  if (answer.pieces.filter(({ before }) => before !== null).length < 2) return null;
  const { before, after, unit } = changeText(answer, home.settings.fieldUnit);
  return `${wholeName(home)} ${before}${arrange.to}${after} ${unit}.`;
}

/** 'bed A': short enough for a sentence. */
export function shortName(kind: PieceKind, letter: string): string {
  return letter ? `${PIECE_WORDS[kind].toLowerCase()} ${letter}` : PIECE_WORDS[kind].toLowerCase();
}
