import type { Assessment } from '../../engine/assess';
import type { PlacedPiece, Proposal } from '../../engine/arranging/arrange';
import type { Home, Id } from '../../home/home';
import {
  changeText,
  decisionSentence,
  ruleSentence,
  takenSentence,
  type ChangeText,
} from '../../words/arranging';
import {
  alternativeSentence,
  movedText,
  pieceShort,
  provenSentence,
  wholeName,
  type FurnitureChange,
} from '../../words/furniture';
import { doseText, doseUnitName, intervalText } from '../../words/numbers';
import { reportWords } from '../../words/report';
import { roomName } from '../../words/things';
import type { Drawing } from './drawing';
import { houseBounds } from './planBounds';
import { MM, pictureFor } from './paper';
import { planDrawing } from './planDrawing';
import type { Table } from './table';

/** How the furniture stood before and stands after, with what that is worth and how surely. */
export interface ArrangementPart {
  title: string;
  /** Whose dose `change` is. */
  whole: string;
  change: ChangeText;
  decision: string;
  /** What the two plans of a level are called. */
  before: string;
  after: string;
  plans: { title: string; before: Drawing; after: Drawing }[];
  pieces: Table;
  rooms: Table | null;
  roomsTitle: string;
  notes: string[];
}

const BOX = { width: 84 * MM, height: 84 * MM };

export function arrangementPart(
  change: FurnitureChange,
  round: Id,
  assessment: Assessment,
  target: number,
): ArrangementPart {
  const { home, answer, proposal } = change;
  const levels = Object.keys(home.levels).filter((level) =>
    answer.pieces.some(
      (placed) => placed.moves && (placed.level === level || home.pieces[placed.id]?.level === level),
    ),
  );
  return {
    title: proposal ? reportWords.arrangement : reportWords.arrangementTaken,
    whole: wholeName(home),
    change: changeText(answer, home.settings.fieldUnit),
    decision: proposal ? decisionSentence(answer.decision) : takenSentence(answer.decision),
    before: proposal ? reportWords.asItStands : reportWords.asFound,
    after: proposal ? reportWords.proposed : reportWords.asItStands,
    plans: levels.map((level) => {
      const sheet = pictureFor(houseBounds(home, level, []), BOX);
      const picture = assessment.pictures.find((one) => one.level === level) ?? null;
      const draw = (proposed: PlacedPiece[]) =>
        planDrawing({ home, level, round, picture, target, sheet, detailed: false, proposed });
      return { title: home.levels[level]!.name, before: draw([]), after: draw(answer.pieces) };
    }),
    pieces: piecesTable(change),
    rooms: proposal && roomsTable(home, proposal),
    roomsTitle: proposal?.about ? reportWords.inRooms(pieceShort(home, proposal.about)) : '',
    notes: proposal ? notesOf(home, proposal) : [],
  };
}

function piecesTable({ home, answer, proposal }: FurnitureChange): Table {
  const unit = home.settings.fieldUnit;
  const [before, after] = proposal ? ['now', 'then'] : ['as found', 'now'];
  return {
    heads: [
      { text: 'piece' },
      { text: 'stands in' },
      { text: `${before}, ${doseUnitName(unit)}`, right: true },
      { text: after!, right: true, strong: true },
      { text: '90\u2009% interval', right: true },
      { text: '' },
    ],
    rows: answer.pieces.map((placed) => [
      pieceShort(home, placed.id),
      placed.moves ? roomName(home, placed.room) : proposal ? reportWords.stays : reportWords.stayed,
      placed.before ? doseText(placed.before.dose, unit) : '—',
      placed.after ? doseText(placed.after.dose, unit) : '—',
      placed.after ? intervalText(placed.after.low, placed.after.high, unit) : '—',
      placed.moves ? movedText(home, placed) : '',
    ]),
  };
}

/** What a rule speaks of, by its name. */
function nameOf(home: Home, id: Id | null): string | null {
  if (id === null) return null;
  return home.pieces[id] ? pieceShort(home, id) : home.fixtures[id]?.name || null;
}

const notesOf = (home: Home, { proven, about, alternatives, blocked }: Proposal): string[] => [
  provenSentence(proven),
  ...alternatives.slice(0, 3).map((alternative, i) => alternativeSentence(home, about, alternative, i)),
  ...blocked.map(
    ({ id, rule }) => `${pieceShort(home, id)} stays. ${ruleSentence(rule, nameOf(home, rule.with))}`,
  ),
];

function roomsTable(home: Home, proposal: Proposal): Table | null {
  if (proposal.rooms.length < 2) return null;
  const unit = home.settings.fieldUnit;
  return {
    heads: [
      { text: 'room' },
      { text: `its dose, ${doseUnitName(unit)}`, right: true, strong: true },
      { text: '90\u2009% interval', right: true },
      { text: '' },
    ],
    rows: proposal.rooms.map((offer) => [
      roomName(home, offer.id),
      'dose' in offer ? doseText(offer.dose, unit) : '—',
      'dose' in offer ? intervalText(offer.low, offer.high, unit) : '—',
      'dose' in offer ? '' : ruleSentence(offer.blocked, nameOf(home, offer.blocked.with)),
    ]),
  };
}
