import type { Alternative, Answer, PlacedPiece, Proposal } from '../engine/arranging/arrange';
import type { Home, Id } from '../home/home';
import { roomAt } from '../home/questions/roomAt';
import { wallAt } from '../home/questions/wallAt';
import { answerTitle } from './arrange';
import { pieceShort } from './canvas';
import { furnitureName, roomName } from './things';

export const otherWords = {
  title: 'Other answers',
  best: 'Best answer',
};

/** An answer that is not the best: its place in the proposal's list, what it does in a line, and the piece it is told by. */
export interface Other {
  index: number;
  answer: Alternative;
  title: string;
  /** The same with the name of the piece: a title by itself. */
  whole: string;
  placed: PlacedPiece;
}

/** The other answers of a proposal, each with a title no other has; those in which equal pieces have only changed places with each other are one. */
export function otherAnswers(home: Home, proposal: Proposal): Other[] {
  const seen = new Set([placesOf(home, proposal)]);
  const others = proposal.alternatives.flatMap((answer, i): Omit<Other, 'title' | 'whole'>[] => {
    const places = placesOf(home, answer);
    const placed = answer.pieces.find(({ id }) => id === answer.piece);
    if (!placed || seen.has(places)) return [];
    seen.add(places);
    return [{ index: i + 1, answer, placed }];
  });
  let parts = others.map(({ answer, placed }) => [
    ...leadParts(home, proposal, answer, placed),
    ...roomChanges(home, proposal, answer),
  ]);
  // What two share tells neither: the rest of what differs is said too, and then the wall itself.
  for (const more of [otherPieces, wallParts]) {
    const titles = parts.map((own) => own.join(', '));
    parts = parts.map((own, i) =>
      titles.indexOf(titles[i]!) === titles.lastIndexOf(titles[i]!)
        ? own
        : [...new Set([...own, ...more(home, proposal, others[i]!.answer)])],
    );
  }
  const titles = parts.map((own) => own.join(', '));
  return others.map((other, i) => {
    const before = titles.slice(0, i).filter((title) => title === titles[i]).length;
    const text = before > 0 ? `${titles[i]!}, ${before + 1}` : titles[i]!;
    const { id } = other.placed;
    const whole = id === proposal.about ? `${furnitureName(home, id)}, ${text}` : capital(text);
    return { ...other, title: capital(text), whole };
  });
}

/** What the answer that is looked at does, in one line: another by what tells it from the best. */
export function shownTitle(
  home: Home,
  proposal: Proposal,
  answer: Answer,
  shown: number | 'relaxed',
): string {
  const other = otherAnswers(home, proposal).find(({ index }) => index === shown);
  return other?.whole ?? answerTitle(home, answer, proposal.about);
}

/** 'head to the west wall', 'at the north wall'; where it stands at none, the room. */
function wallText(home: Home, placed: PlacedPiece): string {
  const wall = wallAt(home, placed);
  if (!wall) return `away from the walls of ${roomName(home, placed.room)}`;
  const at = home.pieces[placed.id]!.kind === 'bed' ? 'head to' : 'at';
  return `${at} the ${pointText(wall.bearing)} wall`;
}

const POINTS = ['north', 'north-east', 'east', 'south-east', 'south', 'south-west', 'west', 'north-west'];

/** One of the eight points, of a bearing in degrees clockwise from north. */
export const pointText = (bearing: number): string => POINTS[(Math.round(bearing / 45) + 16) % 8]!;

function leadParts(
  home: Home,
  { about, rooms }: Proposal,
  { piece, differs }: Alternative,
  placed: PlacedPiece,
): string[] {
  const room = roomName(home, placed.room);
  const short = pieceShort(home, piece);
  if (differs === 'room') return [piece === about ? `in ${room}` : `${short} in ${room}`];
  const wall = wallText(home, placed);
  // Where there are other rooms for it a wall needs its room; away from the walls it is named already.
  const named = rooms.length > 1 && !wall.includes(room);
  if (piece === about) return named ? [room, wall] : [wall];
  return named ? [`${short} in ${room}`, wall] : [`${short} ${wall}`];
}

/** Pieces that would change rooms in this answer and not in the best. */
const roomChanges = (home: Home, best: Answer, { piece, pieces }: Alternative): string[] =>
  pieces
    .filter(({ id, room }) => id !== piece && room !== roomNow(home, id) && room !== roomIn(best, id))
    .map(({ id }) => `${pieceShort(home, id)} changes rooms`);

/** Where the pieces slept in stand that stand elsewhere in the best. */
const otherPieces = (home: Home, best: Answer, answer: Alternative): string[] =>
  answer.pieces
    .filter((placed) => placed.id !== answer.piece && isSleptIn(home, placed.id))
    .filter((placed) => {
      const there = best.pieces.find(({ id }) => id === placed.id);
      return there && keyOf(home, there) !== keyOf(home, placed);
    })
    .map((placed) =>
      roomIn(best, placed.id) === placed.room
        ? `${pieceShort(home, placed.id)} ${wallText(home, placed)}`
        : `${pieceShort(home, placed.id)} in ${roomName(home, placed.room)}`,
    );

/** What tells the wall from others that face the same way. */
function wallParts(home: Home, _: Answer, { piece, pieces }: Alternative): string[] {
  const placed = pieces.find(({ id }) => id === piece)!;
  const wall = wallAt(home, placed);
  if (!wall) return [];
  const has = wall.window ? 'with the window' : wall.door ? 'with the door' : 'without window or door';
  return [wallText(home, placed), `the one ${has}`];
}

const roomIn = ({ pieces }: Answer, id: Id): Id | undefined => pieces.find((one) => one.id === id)?.room;

function roomNow(home: Home, id: Id): Id | undefined {
  const piece = home.pieces[id];
  return piece && roomAt(home, piece.level, piece.at)?.id;
}

const isSleptIn = (home: Home, id: Id): boolean => ['bed', 'cot'].includes(home.pieces[id]?.kind ?? '');

const keyOf = (home: Home, placed: PlacedPiece): string => `${placed.room} ${wallAt(home, placed)?.wall}`;

/** The places of what is slept in, whichever of equal pieces has which. */
function placesOf(home: Home, { pieces }: Answer): string {
  const places = pieces.flatMap((placed) => {
    const piece = home.pieces[placed.id];
    if (!piece || !isSleptIn(home, placed.id)) return [];
    const hours = piece.uses.map(({ side, hours }) => `${side} ${hours}`).sort();
    return [`${piece.kind} ${piece.size.join(' ')} ${hours.join(' ')} ${keyOf(home, placed)}`];
  });
  return places.sort().join('; ');
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
