import type { Assessment } from '../../engine/assess';
import type { PlacedPiece, Proposal } from '../../engine/arranging/arrange';
import type { Home, Id } from '../../home/home';
import { changeText, decisionSentence, takenSentence, type ChangeText } from '../../words/arranging';
import { pieceShort } from '../../words/canvas';
import { movedText, provenSentence, wholeName, type FurnitureChange } from '../../words/furniture';
import { doseText, doseUnitName, intervalText } from '../../words/numbers';
import { arrangementWords, askedSentences } from '../../words/arrangementReport';
import { brokenRuleText } from '../../words/brokenRules';
import { ARRANGE_CAUTION } from '../../words/cautions';
import { otherAnswers } from '../../words/otherAnswers';
import { relaxationWords, relaxedSentence } from '../../words/relaxation';
import { reportWords } from '../../words/report';
import { personText } from '../../words/wishes';
import type { ArrangeWishes } from '../../home/questions/arrangeQuestion';
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
  /** The rooms one may sleep in, the people, the other answers. */
  tables: { title: string; table: Table }[];
  notes: string[];
}

const right = true as const;
const INTERVAL = '90\u2009% interval';

const BOX = { width: 84 * MM, height: 84 * MM };

export function arrangementPart(
  change: FurnitureChange,
  round: Id,
  assessment: Assessment,
  target: number,
  wishes: ArrangeWishes,
): ArrangementPart {
  const { home, answer, proposal, aim } = change;
  const levels = Object.keys(home.levels).filter((level) =>
    answer.pieces.some(
      (placed) => placed.moves && (placed.level === level || home.pieces[placed.id]?.level === level),
    ),
  );
  return {
    title: proposal ? reportWords.arrangement : reportWords.arrangementTaken,
    whole: wholeName(home),
    change: changeText(answer, home.settings.fieldUnit),
    decision: proposal ? decisionSentence(answer.decision, aim) : takenSentence(answer.decision),
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
    tables: [
      ...(proposal ? roomsTable(change, proposal) : []),
      ...peopleTable(change),
      ...(proposal ? othersTable(home, proposal) : []),
    ],
    notes: proposal ? [...askedSentences(home, wishes), ...notesOf(change, proposal), ARRANGE_CAUTION] : [],
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
      placed.moves ? movedText(home, placed, !proposal) : '',
    ]),
  };
}

function notesOf({ home, aim }: FurnitureChange, proposal: Proposal): string[] {
  const { blocked, relaxed } = proposal;
  const stuck = blocked.filter(({ rule }) => rule.kind !== 'not-tried').length;
  return [
    provenSentence(proposal, aim),
    ...blocked.map(
      ({ id, rule }) => `${pieceShort(home, id)} stays. ${brokenRuleText(home, home.pieces[id]!, rule)}`,
    ),
    ...(relaxed ? [relaxedSentence(home, relaxed.changes, stuck)] : []),
    ...(stuck > 0 ? [relaxationWords.never] : []),
  ];
}

function roomsTable({ home, aim }: FurnitureChange, { rooms, about }: Proposal): ArrangementPart['tables'] {
  if (rooms.length < 2 || about === null) return [];
  const unit = home.settings.fieldUnit;
  const heads = [
    { text: 'room' },
    { text: `its dose, ${doseUnitName(unit)}`, right, strong: right },
    { text: INTERVAL, right },
    { text: '' },
  ];
  const rows = rooms.map((offer) => [
    roomName(home, offer.id),
    'dose' in offer ? doseText(offer.dose, unit) : '—',
    'dose' in offer ? intervalText(offer.low, offer.high, unit) : '—',
    'dose' in offer ? '' : brokenRuleText(home, home.pieces[about]!, offer.blocked),
  ]);
  return [{ title: reportWords.inRooms(pieceShort(home, about), aim), table: { heads, rows } }];
}

function peopleTable({ home, answer, proposal }: FurnitureChange): ArrangementPart['tables'] {
  const people = answer.people.filter(({ before, after }) => before && after);
  if (people.length < 2) return [];
  const unit = home.settings.fieldUnit;
  const [before, after] = proposal ? ['now', 'then'] : ['as found', 'now'];
  const heads = [
    { text: arrangementWords.person },
    { text: `${before}, ${doseUnitName(unit)}`, right },
    { text: after!, right, strong: right },
    { text: INTERVAL, right },
    { text: arrangementWords.odds },
  ];
  const rows = people.map((person) => [
    person.who,
    doseText(person.before!.dose, unit),
    doseText(person.after!.dose, unit),
    intervalText(person.after!.low, person.after!.high, unit),
    personText(person),
  ]);
  return [{ title: arrangementWords.people, table: { heads, rows } }];
}

function othersTable(home: Home, proposal: Proposal): ArrangementPart['tables'] {
  const others = otherAnswers(home, proposal);
  if (others.length === 0) return [];
  const unit = home.settings.fieldUnit;
  const heads = [
    { text: arrangementWords.answer },
    { text: arrangementWords.piece },
    { text: `its dose, ${doseUnitName(unit)}`, right, strong: right },
    { text: INTERVAL, right },
    { text: arrangementWords.whole, right },
  ];
  const rows = others.map(({ title, placed, answer }) => [
    title,
    pieceShort(home, placed.id),
    placed.after ? doseText(placed.after.dose, unit) : '—',
    placed.after ? intervalText(placed.after.low, placed.after.high, unit) : '—',
    doseText(answer.after, unit),
  ]);
  return [{ title: arrangementWords.others, table: { heads, rows } }];
}
