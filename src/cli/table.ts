import { furnitureName, roomName, thingName } from '../words/things';
import { defaultModelSentence, evidenceSentences, classText } from '../words/assessment';
import { decisionText, ruleSentence } from '../words/arranging';
import { edgeText } from '../words/canvas';
import { SHORT_CAUTION } from '../words/cautions';
import {
  doseText,
  doseUnitName,
  fieldText,
  fixedText,
  intervalText,
  percentText,
  unitName,
} from '../words/numbers';
import { shareSentence, silentSentences, sourceWords } from '../words/sources';
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
    `Method: ${answer.method} (${answer.why}).`,
    ...evidenceSentences(worked.assessment.evidence),
    ...[defaultModelSentence(worked.assessment.fitted)].filter((sentence) => sentence !== null),
    ...sourceLines(worked),
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

function sourceLines({ home, assessment }: Worked): string[] {
  const { fitted, evidence } = assessment;
  const shares = fitted.sources ? evidence.sources.map((share) => shareSentence(home, share)) : [];
  const lines = [...shares, ...silentSentences(home, evidence.sources)];
  return lines.length > 0 ? section(sourceWords.title, lines) : [];
}

function roomLines({ home, assessment, request }: Worked): string[] {
  const unit = home.settings.fieldUnit;
  if (assessment.rooms.length === 0) return [];
  const heads = [
    'room',
    'use',
    `middle, ${unitName(unit)}`,
    '90 % interval',
    '95 % below',
    `over ${edgeText(request.target, unit)}`,
    'drawn',
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
    classText(room.class),
  ]);
  return section('Rooms', columns(heads, rows, [2, 3, 4, 5, 6]));
}

function pieceLines({ home, assessment }: Worked): string[] {
  const unit = home.settings.fieldUnit;
  if (assessment.pieces.length === 0) return [];
  const heads = [
    'piece',
    `mean, ${unitName(unit)}`,
    `dose a day, ${doseUnitName(unit)}`,
    '90 % interval',
    '',
  ];
  const rows = assessment.pieces.map(({ id, mean, dose, supported }) => [
    furnitureName(home, id),
    fieldText(mean, unit),
    doseText(dose.dose, unit),
    intervalText(dose.low, dose.high, unit),
    supported ? '' : 'the map is not drawn there',
  ]);
  return section('Furniture where it stands', columns(heads, rows, [1, 2, 3]));
}

function pointLines({ home }: Worked, { points }: Answer): string[] {
  const unit = home.settings.fieldUnit;
  if (points.length === 0) return [];
  const heads = ['x, m', 'y, m', `estimate, ${unitName(unit)}`, '90 % interval', ''];
  const rows = points.map(({ at, value, low, high, reason }) => [
    fixedText(at[0], 2),
    fixedText(at[1], 2),
    fieldText(value, unit),
    intervalText(low, high, unit),
    reason ? `not supported: ${reason}` : '',
  ]);
  return section('Places', columns(heads, rows, [0, 1, 2, 3]));
}

function arrangementLines({ home, proposal }: Worked): string[] {
  if (!proposal) return [];
  const unit = home.settings.fieldUnit;
  const name = (id: string | null) => (id === null ? null : furnitureName(home, id));
  const heads = [
    'piece',
    'room',
    'x, m',
    'y, m',
    'angle',
    `now, ${doseUnitName(unit)}`,
    'then',
    '90 % interval',
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
  const tried = proposal.proven ? 'No place tried is lower.' : 'Not every place was tried.';
  const total = `Daily dose from ${doseText(proposal.before, unit)} to ${doseText(proposal.after, unit)} ${doseUnitName(unit)} (${intervalText(proposal.low, proposal.high, unit)}). ${tried}`;
  const left = proposal.blocked.map(
    ({ id, rule }) => `${furnitureName(home, id)} fits nowhere. ${ruleSentence(rule, name(rule.with))}`,
  );
  return section('Arrangement', [total, ...columns(heads, rows, [2, 3, 4, 5, 6, 7]), ...left]);
}

function profileLines({ home }: Worked, { profile }: Answer): string[] {
  if (!profile) return [];
  const unit = home.settings.fieldUnit;
  const falloff =
    profile.falloff === null
      ? 'The readings do not tell how fast it falls.'
      : `It falls as 1/r^${fixedText(profile.falloff, 1)}.`;
  const heads = ['along, m', `estimate, ${unitName(unit)}`, '90 % interval'];
  const rows = profile.rows.map(([along, value, low, high]) => [
    fixedText(along, 1),
    fieldText(value, unit),
    intervalText(low, high, unit),
  ]);
  return section(thingName(home, { kind: 'walk', id: profile.walk }), [
    falloff,
    targetLine(profile.targetAt),
    ...columns(heads, rows, [0, 1, 2]),
  ]);
}

function targetLine(targetAt: [number, number | null] | null): string {
  if (!targetAt) return 'The target is not met on this walk.';
  const [from, to] = targetAt;
  const end = to === null ? 'the end of the walk or beyond' : `${fixedText(to, 1)} m`;
  return `The target is met between ${fixedText(from, 1)} m and ${end} along it.`;
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
    'The whole level',
    columns(['x, m', 'y, m', unitName(unit), '90 % interval'], rows, [0, 1, 2, 3]),
  );
}
