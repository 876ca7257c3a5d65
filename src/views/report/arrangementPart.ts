import { roomName } from '../../words/things';
import type { Assessment } from '../../engine/assess';
import type { Proposal } from '../../engine/arranging/arrange';
import type { Home, Id } from '../../home/home';
import {
  changeText,
  decisionSentence,
  movedText,
  ruleSentence,
  type ChangeText,
} from '../../words/arranging';
import { doseText, doseUnitName, intervalText } from '../../words/numbers';
import { alternativeSentence, pieceShort, provenSentence, reportWords } from '../../words/report';
import type { Drawing } from './drawing';
import { houseBounds } from './planBounds';
import { MM, pictureFor } from './paper';
import { planDrawing } from './planDrawing';
import type { Table } from './table';

/** Where the furniture stands now and where it would stand best, with what that is worth and how surely. */
export interface ArrangementPart {
  change: ChangeText;
  decision: string;
  plans: { title: string; before: Drawing; after: Drawing }[];
  pieces: Table;
  rooms: Table | null;
  roomsTitle: string;
  notes: string[];
}

const BOX = { width: 84 * MM, height: 84 * MM };

export function arrangementPart(
  home: Home,
  round: Id,
  assessment: Assessment,
  proposal: Proposal,
  target: number,
): ArrangementPart {
  const unit = home.settings.fieldUnit;
  const levels = Object.keys(home.levels).filter((level) =>
    proposal.pieces.some(
      (placed) => placed.moves && (placed.level === level || home.pieces[placed.id]?.level === level),
    ),
  );
  const nameOf = (id: Id | null) =>
    id === null || id === ''
      ? null
      : home.pieces[id]
        ? pieceShort(home, id)
        : home.fixtures[id]?.name || null;
  return {
    change: changeText(proposal, unit),
    decision: decisionSentence(proposal.decision),
    plans: levels.map((level) => {
      const sheet = pictureFor(houseBounds(home, level, []), BOX);
      const picture = assessment.pictures.find((one) => one.level === level) ?? null;
      const draw = (proposed: Proposal['pieces']) =>
        planDrawing({ home, level, round, picture, target, sheet, detailed: false, proposed });
      return { title: home.levels[level]!.name, before: draw([]), after: draw(proposal.pieces) };
    }),
    pieces: {
      heads: [
        { text: 'piece' },
        { text: 'stands in' },
        { text: `now, ${doseUnitName(unit)}`, right: true },
        { text: 'then', right: true, strong: true },
        { text: '90\u2009% interval', right: true },
        { text: '' },
      ],
      rows: proposal.pieces.map((placed) => [
        pieceShort(home, placed.id),
        placed.moves ? roomName(home, placed.room) : reportWords.stays,
        placed.before ? doseText(placed.before.dose, unit) : '—',
        placed.after ? doseText(placed.after.dose, unit) : '—',
        placed.after ? intervalText(placed.after.low, placed.after.high, unit) : '—',
        placed.moves ? movedText(placed.decision, placed.odds) : '',
      ]),
    },
    rooms: roomsTable(home, proposal, nameOf),
    roomsTitle: proposal.about ? reportWords.inRooms(pieceShort(home, proposal.about)) : '',
    notes: [
      provenSentence(proposal.proven),
      ...proposal.alternatives
        .slice(0, 3)
        .map((alternative, i) => alternativeSentence(home, proposal, alternative, i)),
      ...proposal.blocked.map(
        ({ id, rule }) => `${pieceShort(home, id)} stays. ${ruleSentence(rule, nameOf(rule.with))}`,
      ),
    ],
  };
}

function roomsTable(home: Home, proposal: Proposal, nameOf: (id: Id | null) => string | null): Table | null {
  if (proposal.rooms.length < 2) return null;
  const unit = home.settings.fieldUnit;
  return {
    heads: [
      { text: 'room' },
      { text: `least dose, ${doseUnitName(unit)}`, right: true, strong: true },
      { text: '90\u2009% interval', right: true },
      { text: '' },
    ],
    rows: proposal.rooms.map((offer) => [
      roomName(home, offer.id),
      'dose' in offer ? doseText(offer.dose, unit) : '—',
      'dose' in offer ? intervalText(offer.low, offer.high, unit) : '—',
      'dose' in offer ? '' : ruleSentence(offer.blocked, nameOf(offer.blocked.with)),
    ]),
  };
}
