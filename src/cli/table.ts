import { isJudged } from '../engine/judging/judged';
import { furnitureName, roomName, thingName } from '../words/things';
import {
  classText,
  notJudgedText,
  defaultModelSentence,
  SUPPLY_OFF,
  SUPPLY_OFF_ARRANGE,
  supportSentence,
} from '../words/assessment';
import { brokenRuleText } from '../words/brokenRules';
import { decisionText } from '../words/arranging';
import { edgeText } from '../words/canvas';
import { evidenceSentences } from '../words/evidence';
import { movedText, provenSentence } from '../words/furniture';
import { relaxationWords, relaxedSentence } from '../words/relaxation';
import { SHORT_CAUTION } from '../words/cautions';
import { tableWords, withoutControls } from '../words/commandLine';
import {
  doseText,
  fieldText,
  fixedText,
  intervalText,
  percentText,
  shareText,
  unitName,
} from '../words/numbers';
import { originsSentence, shareSentence, silentSentences, sourceWords } from '../words/sources';
import { stepSentences, unmarkedSentence, unmarkedWords } from '../words/unmarked';
import { containsEvenOdd } from '../engine/geometry/polygon';
import { WIDEST } from '../engine/mapping/support';
import { enoughSentence, nextWords, whyReadText } from '../words/nextReadings';
import type { FieldUnit, Home } from '../home/home';
import type { Proposal } from '../engine/arranging/arrange';
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

const isWide = (low: number, high: number): boolean => high > WIDEST * low;

/** A value and its interval, µT or µT·h; what is open by more than a map would show is not known. */
const known = (value: number, low: number, high: number, unit: FieldUnit): [string, string] =>
  isWide(low, high) ? [tableWords.notKnown, ''] : [fieldText(value, unit), intervalText(low, high, unit)];

const inOne = ([value, interval]: [string, string]): string => (interval ? `${value} (${interval})` : value);

const section = (title: string, lines: string[]): string[] => ['', title, ...lines];

/** The same answer to be read: in the home's own unit, with the digits it deserves. */
export function tableOf(worked: Worked, answer: Answer): string {
  const lines = [
    answer.title,
    tableWords.method(answer.method, answer.why),
    ...evidenceSentences(worked.assessment.evidence),
    ...[defaultModelSentence(worked.assessment.fitted)].filter((sentence) => sentence !== null),
    ...[originsSentence(worked.assessment.evidence)].filter((sentence) => sentence !== ''),
    ...(worked.request.supplyOff ? [SUPPLY_OFF] : []),
    ...sourceLines(worked),
    ...roomLines(worked),
    ...pieceLines(worked),
    ...unmarkedLines(worked),
    ...pointLines(worked, answer),
    ...arrangementLines(worked),
    ...nextLines(worked),
    ...profileLines(worked),
    ...gridLines(worked, answer),
    '',
    SHORT_CAUTION,
  ];
  return `${lines.map(withoutControls).join('\n')}\n`;
}

function sourceLines({ home, assessment }: Worked): string[] {
  const { fitted, evidence } = assessment;
  const shares =
    fitted.sources || fitted.sampled ? evidence.sources.map((share) => shareSentence(home, share)) : [];
  const lines = [...shares, ...silentSentences(home, evidence.sources)];
  return lines.length > 0 ? section(sourceWords.title, lines) : [];
}

function unmarkedLines({ home, assessment: { fitted, evidence } }: Worked): string[] {
  const unmarked = evidence.unmarked ?? [];
  if (unmarked.length === 0) return [];
  const lines = unmarked.map((source) => unmarkedSentence(home, fitted, source));
  return section(unmarkedWords.title, [...lines, ...stepSentences(unmarked)]);
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
    tableWords.highest,
    tableWords.over(edgeText(request.target, unit)),
    tableWords.drawn,
    request.guideline.name,
  ];
  const rows = assessment.rooms.map((room) => [
    roomName(home, room.id),
    home.rooms[room.id]!.use,
    ...known(room.median, room.low, room.high, unit),
    inOne(known(room.p95, room.p95Low, room.p95High, unit)),
    inOne(known(room.max, room.maxLow, room.maxHigh, unit)),
    isWide(room.low, room.high)
      ? tableWords.notKnown
      : shareText(room.overTarget, room.overTargetLow, room.overTargetHigh),
    percentText(room.supported),
    isJudged(room) ? classText(room) : notJudgedText(room.supported),
  ]);
  return section(tableWords.rooms, columns(heads, rows, [2, 3, 4, 5, 6, 7]));
}

function pieceLines({ home, assessment }: Worked): string[] {
  const unit = home.settings.fieldUnit;
  if (assessment.pieces.length === 0) return [];
  const heads = [tableWords.piece, tableWords.mean(unit), tableWords.doseADay(unit), tableWords.interval, ''];
  const rows = assessment.pieces.map(({ id, mean, dose, supported }) => [
    furnitureName(home, id),
    isWide(dose.low, dose.high) ? tableWords.notKnown : fieldText(mean, unit),
    ...known(dose.dose, dose.low, dose.high, unit),
    supported ? '' : tableWords.notDrawn,
  ]);
  return section(tableWords.furniture, columns(heads, rows, [1, 2, 3]));
}

/** A place outside every room or without support has no number, as on the page; the reason stands in its row. */
function pointLines({ home, request }: Worked, { points }: Answer): string[] {
  const { fieldUnit: unit, lengthUnit } = home.settings;
  if (points.length === 0) return [];
  const heads = [
    'x, m',
    'y, m',
    tableWords.level,
    tableWords.height,
    tableWords.estimate(unit),
    tableWords.interval,
    '',
  ];
  const rows = points.map(({ at, level, height, value, low, high, reason, nearest }) => {
    const floor = request.levels.find(({ id }) => id === level)?.outline ?? [];
    const why = containsEvenOdd(floor, at) ? reason : 'outside';
    return [
      fixedText(at[0], 2),
      fixedText(at[1], 2),
      home.levels[level]!.name || level,
      fixedText(height, 2),
      ...(why ? ['—', '—'] : known(value, low, high, unit)),
      why ? supportSentence(why, nearest, lengthUnit) : '',
    ];
  });
  return section(tableWords.places, columns(heads, rows, [0, 1, 3, 4, 5]));
}

function arrangementLines({ home, proposal, request }: Worked): string[] {
  if (!proposal) return [];
  const pieces = Object.values(home.pieces);
  if (pieces.length === 0) return section(tableWords.arrangement, [tableWords.noFurniture]);
  if (pieces.every(({ locked }) => locked))
    return section(tableWords.arrangement, [tableWords.nothingMayMove]);
  const unit = home.settings.fieldUnit;
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
    piece.moves ? movedText(home, piece) : decisionText(piece.decision, piece.odds),
  ]);
  const isUsed = proposal.people.length > 0;
  const supplyOff = request.supplyOff ? [SUPPLY_OFF_ARRANGE] : [];
  return section(tableWords.arrangement, [
    ...supplyOff,
    ...(isUsed ? [tableWords.total(proposal, unit)] : []),
    ...(rows.length > 0
      ? [provenSentence(proposal, 'mean'), ...columns(heads, rows, [2, 3, 4, 5, 6, 7])]
      : []),
    ...blockedLines(home, proposal),
  ]);
}

/** What stays since it finds no place or was not tried, and what would have to be given up for all to fit. */
function blockedLines(home: Home, { blocked, relaxed }: Proposal): string[] {
  const stuck = blocked.filter(({ rule }) => rule.kind !== 'not-tried').length;
  const wayOut = relaxed ? relaxedSentence(home, relaxed.changes, stuck) : relaxationWords.nothingHelps;
  return [
    ...blocked.map(({ id, rule }) =>
      tableWords.stays(furnitureName(home, id), brokenRuleText(home, home.pieces[id]!, rule)),
    ),
    ...(stuck > 0 ? [wayOut, relaxationWords.never] : []),
  ];
}

function nextLines({ home, next }: Worked): string[] {
  if (!next) return [];
  const heads = ['', 'x, m', 'y, m', tableWords.level, tableWords.height, ''];
  const rows = next.readings.map((reading, i) => [
    String(i + 1),
    fixedText(reading.at[0], 2),
    fixedText(reading.at[1], 2),
    home.levels[reading.level]!.name || reading.level,
    fixedText(reading.height, 2),
    whyReadText(home, reading),
  ]);
  return section(nextWords.title, [
    ...(rows.length > 0 ? columns(heads, rows, [0, 1, 2, 4]) : []),
    ...(next.enough ? [enoughSentence(rows.length)] : []),
  ]);
}

function profileLines({ home, options, assessment }: Worked): string[] {
  const profile = assessment.profiles.find(({ walk }) => walk === options.along);
  if (!profile) return [];
  const unit = home.settings.fieldUnit;
  const heads = [tableWords.along, tableWords.estimate(unit), tableWords.interval];
  const rows = profile.rows.map(([along, value, low, high]) => [
    fixedText(along, 1),
    ...known(value, low, high, unit),
  ]);
  return section(thingName(home, { kind: 'walk', id: profile.walk }), [
    tableWords.falloff(profile),
    tableWords.targetAt(profile.targetAt, home.settings.lengthUnit),
    ...columns(heads, rows, [0, 1, 2]),
  ]);
}

function gridLines({ home }: Worked, { grid }: Answer): string[] {
  if (!grid) return [];
  const unit = home.settings.fieldUnit;
  const rows = grid.map(([x, y, value, low, high]) => [
    fixedText(x, 2),
    fixedText(y, 2),
    ...known(value, low, high, unit),
  ]);
  return section(
    tableWords.wholeLevel,
    columns(['x, m', 'y, m', unitName(unit), tableWords.interval], rows, [0, 1, 2, 3]),
  );
}
