import type { Answer, PlacedPiece, Proposal } from '../engine/arranging/arrange';
import type { Home, Id } from '../home/home';
import type { ArrangeWishes } from '../home/questions/arrangeQuestion';
import { roomAt } from '../home/questions/roomAt';
import { changeText, isLower, leadOf, spellName } from './arranging';
import { pieceShort } from './canvas';
import { oddsText, percentText } from './numbers';
import type { Part } from './report';
import { moreSentence } from './whoHasMore';
import { lowerFirst } from './things';

/** Furniture that would move, or that has: the home before it did, and what the places after are worth. */
export interface FurnitureChange {
  home: Home;
  answer: Answer;
  /** The piece that is spoken of first; null: the one that gains most. */
  about: Id | null;
  /** Null where the change has been taken. */
  proposal: Proposal | null;
  /** For whom the dose was made least. */
  aim: ArrangeWishes['aim'];
}

/** The change in one sentence, of the piece that gains; null where furniture was moved for no clear gain. */
export function changeLead({ home, answer, about, proposal, aim }: FurnitureChange): Part[] | null {
  const placed = leadOf(answer, about);
  const piece = placed && home.pieces[placed.id];
  if (answer.decision === 'stay' || !placed || !piece)
    return proposal && [plain(aim === 'mean' ? STAY : STAY_WORST_OFF)];
  const unit = home.settings.fieldUnit;
  const { before, after } = placed;
  const change = changeText(
    { before: before!.dose, after: after!.dose, low: after!.low, high: after!.high },
    unit,
  );
  const more = moreSentence(home, answer);
  const verb = proposal ? 'falls' : 'fell';
  return [
    plain(`${spellName(piece.kind)} ${pieceShort(home, piece.id)} ${verb} from ${change.before} to `),
    { text: `${change.after} ${change.unit}`, tone: 'gain' },
    { text: ` (${change.interval})`, tone: 'soft' },
    plain(`${whereTo(home, placed)}${surely(placed, proposal !== null)}`),
    ...(more ? [plain(` ${more}`)] : []),
  ];
}

const plain = (text: string): Part => ({ text, tone: 'plain' });

const STAY = 'The furniture stays: no arrangement tried is clearly lower for the home as a whole.';
const STAY_WORST_OFF = 'The furniture stays: no arrangement tried is clearly lower for whoever is worst off.';

function whereTo(home: Home, { id, room }: PlacedPiece): string {
  const piece = home.pieces[id]!;
  if (roomAt(home, piece.level, piece.at)?.id === room) return ' across the same room';
  const name = home.rooms[room]?.name;
  return name ? ` in the ${lowerFirst(name)}` : '';
}

function surely({ decision, odds }: PlacedPiece, proposed: boolean): string {
  if (decision === 'move' && odds !== null) return `; better there: ${oddsText(odds)}.`;
  if (decision === 'stay' || !proposed) return ', which is not certain.';
  return '. That is likely, not certain: measure both places first.';
}

/** Whose dose a change of the whole home is: a head, or the beginning of a sentence. */
export function wholeName(home: Home): string {
  const people = new Set(Object.values(home.pieces).flatMap(({ uses }) => uses.map(({ who }) => who))).size;
  return people > 1
    ? `The home as a whole, mean over its ${people} people:`
    : 'The home as a whole, all pieces together:';
}

/** How good the places are among all that were tried. */
export function provenSentence(
  { proven, gap }: Pick<Proposal, 'proven' | 'gap'>,
  aim: ArrangeWishes['aim'],
): string {
  if (proven)
    return aim === 'mean'
      ? 'Of the arrangements tried inside the rules none is lower for the home as a whole by more than a hundredth.'
      : 'Of the arrangements tried inside the rules none leaves whoever is worst off with less by more than a hundredth.';
  const most = gap < 1 ? `, lower by ${percentText(gap)} at most,` : '';
  return `The search was cut short: a lower dose${most} may be found among places not tried.`;
}

/**
 * What is said beside a piece that moves, or was `taken` to where it is. The planner moves what gains nothing only so that it keeps
 * the rules; a hand may have done it for any reason.
 */
export function movedText(home: Home, placed: PlacedPiece, taken = false): string {
  if (!isLower(placed) || (placed.decision === 'stay' && placed.makesWayFor !== null)) {
    if (placed.makesWayFor) return `makes way for ${pieceShort(home, placed.makesWayFor)}`;
    return taken ? 'no gain of its own' : 'keeps the rules there';
  }
  if (placed.decision === 'stay' || placed.odds === null) return 'no clear gain of its own';
  const better = `better there: ${oddsText(placed.odds)}`;
  return placed.decision === 'move' ? better : `likely ${better}`;
}
