import { isJudged } from '../engine/judging/rooms';
import { furnitureName, roomName, thingName } from '../words/things';
import {
  classText,
  notJudgedText,
  defaultModelSentence,
  evidenceSentences,
  supportSentence,
} from '../words/assessment';
import { decisionText, ruleSentence } from '../words/arranging';
import { edgeText } from '../words/canvas';
import { SHORT_CAUTION } from '../words/cautions';
import { tableWords } from '../words/commandLine';
import { doseText, fieldText, fixedText, intervalText, percentText, unitName } from '../words/numbers';
import type { Worked, answerOf } from './answer';

type Answer = ReturnType<typeof answerOf>;

/** Columns under their heads, numbers to the right, two spaces between. */
function columns(heads: string[], rows: string[][], right: number[]): string[] {
  const widths = heads.map((head, i) => Math.max(head.length, ...rows.map((row) => row[i]!.length)));
  const line = (cells: string[]) =>
    cells
      .map((cell, i) => (right.includes(i) ? cell.padStart(widths[i]!) : cell.padEnd(widths[i]!)))
      .join('  ')
      .trimEnd();
  return [line(heads), line(widths.map((width) => '-'.repeat(width))), ...rows.map(line)];
}

const section = (title: string, lines: string[]): string[] => ['', title, ...lines];

/** The same answer to be read: in the home's own unit, with the digits it deserves. */
export function tableOf(worked: Worked, answer: Answer): string {
  const lines = [
    answer.title,
    tableWords.method(answer.method, answer.why),
    ...evidenceSentences(worked.assessment.evidence),
    ...[defaultModelSentence(worked.assessment.fitted)].filter((sentence) => sentence !== null),
    ...roomLines(worked),
    ...pieceLines(worked),
    ...pointLines(worked, answer),
    ...arrangementLines(worked),
    ...profileLines(worked, answer),
    ...gridLines(worked, answer),
    '',
    SHORT_CAUTION,
  ];
  return `${lines.join('\n')}\n`;
}

function roomLines({ home, assessment, request }: Worked): string[] {
  const unit = home.settings.fieldUnit;
  if (assessment.rooms.length === 0) return [];
  const heads = [
    tableWords.room,
    tableWords.use,
    tableWords.middle(unit),
    tableWords.interval,
    tableWords.below95,
    tableWords.over(edgeText(request.target, unit)),
    tableWords.drawn,
    request.guideline.name,
  ];
  const rows = assessment.rooms.map((room) => [
    roomName(home, room.id),
    home.rooms[room.id]!.use,
    fieldText(room.median, unit),
    intervalText(room.low, room.high, unit),
    fieldText(room.p95, unit),
    percentText(room.overTarget),
    percentText(room.supported),
    isJudged(room) ? classText(room) : notJudgedText(room.supported),
  ]);
  return section(tableWords.rooms, columns(heads, rows, [2, 3, 4, 5, 6]));
}

function pieceLines({ home, assessment }: Worked): string[] {
  const unit = home.settings.fieldUnit;
  if (assessment.pieces.length === 0) return [];
  const heads = [tableWords.piece, tableWords.mean(unit), tableWords.doseADay(unit), tableWords.interval, ''];
  const rows = assessment.pieces.map(({ id, mean, dose, supported }) => [
    furnitureName(home, id),
    fieldText(mean, unit),
    doseText(dose.dose, unit),
    intervalText(dose.low, dose.high, unit),
    supported ? '' : tableWords.notDrawn,
  ]);
  return section(tableWords.furniture, columns(heads, rows, [1, 2, 3]));
}

function pointLines({ home }: Worked, { points }: Answer): string[] {
  const unit = home.settings.fieldUnit;
  if (points.length === 0) return [];
  const heads = ['x, m', 'y, m', tableWords.estimate(unit), tableWords.interval, ''];
  const rows = points.map(({ at, value, low, high, reason }) => [
    fixedText(at[0], 2),
    fixedText(at[1], 2),
    fieldText(value, unit),
    intervalText(low, high, unit),
    reason ? supportSentence(reason, null, 'm') : '',
  ]);
  return section(tableWords.places, columns(heads, rows, [0, 1, 2, 3]));
}

function arrangementLines({ home, proposal }: Worked): string[] {
  if (!proposal) return [];
  const unit = home.settings.fieldUnit;
  const name = (id: string | null) => (id === null ? null : furnitureName(home, id));
  const heads = [
    tableWords.piece,
    tableWords.room,
    'x, m',
    'y, m',
    tableWords.angle,
    tableWords.now(unit),
    tableWords.then,
    tableWords.interval,
    '',
  ];
  const rows = proposal.pieces.map((piece) => [
    furnitureName(home, piece.id),
    roomName(home, piece.room),
    fixedText(piece.at[0], 2),
    fixedText(piece.at[1], 2),
    fixedText(piece.angle, 0),
    piece.before ? doseText(piece.before.dose, unit) : '—',
    piece.after ? doseText(piece.after.dose, unit) : '—',
    piece.after ? intervalText(piece.after.low, piece.after.high, unit) : '—',
    decisionText(piece.decision, piece.odds),
  ]);
  const total = tableWords.total(proposal, unit);
  const left = proposal.blocked.map(({ id, rule }) =>
    tableWords.fitsNowhere(furnitureName(home, id), ruleSentence(rule, name(rule.with))),
  );
  return section(tableWords.arrangement, [total, ...columns(heads, rows, [2, 3, 4, 5, 6, 7]), ...left]);
}

function profileLines({ home }: Worked, { profile }: Answer): string[] {
  if (!profile) return [];
  const unit = home.settings.fieldUnit;
  const heads = [tableWords.along, tableWords.estimate(unit), tableWords.interval];
  const rows = profile.rows.map(([along, value, low, high]) => [
    fixedText(along, 1),
    fieldText(value, unit),
    intervalText(low, high, unit),
  ]);
  return section(thingName(home, { kind: 'walk', id: profile.walk }), [
    tableWords.falloff(profile.falloff),
    tableWords.targetAt(profile.targetAt),
    ...columns(heads, rows, [0, 1, 2]),
  ]);
}

function gridLines({ home }: Worked, { grid }: Answer): string[] {
  if (!grid) return [];
  const unit = home.settings.fieldUnit;
  const rows = grid.map(([x, y, value, low, high]) => [
    fixedText(x, 2),
    fixedText(y, 2),
    fieldText(value, unit),
    intervalText(low, high, unit),
  ]);
  return section(
    tableWords.wholeLevel,
    columns(['x, m', 'y, m', unitName(unit), tableWords.interval], rows, [0, 1, 2, 3]),
  );
}
