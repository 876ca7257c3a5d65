import type { AssessRequest, Assessment } from '../../engine/assess';
import type { GuidelineSet } from '../../engine/judging/guidelines';
import type { Home, Id, Reading } from '../../home/home';
import { edgeText, pieceLetters } from '../../words/canvas';
import { fixedText, lengthText, unitName } from '../../words/numbers';
import { fullReadingText, mapCaption, meterOf, readingNotes, reportWords } from '../../words/report';
import { numberOf } from '../../words/things';
import type { Drawing } from './drawing';
import { keyOfSigns, type KeySign } from './keyOfSigns';
import { EDGE } from './metreFrame';
import { MM, PAGE, sheetFor } from './paper';
import { levelBounds, sourcesSeen } from './planBounds';
import { planDrawing, readingsOf } from './planDrawing';
import { rulerDrawing } from './rulerDrawing';
import { blocksOf, type Block, type Table } from './table';

/** The page of one level: its map in true scale with the whole ruler, the key of signs, and every reading. */
export interface MapPart {
  level: Id;
  title: string;
  caption: string;
  /** What the surveyor says of the round. */
  note: string;
  plan: Drawing;
  ruler: Drawing;
  signs: KeySign[];
  readingsTitle: string;
  /** Columns of each block. */
  columns: 2 | 3;
  readings: Block[];
  notes: string[];
}

export interface MapRequest {
  home: Home;
  round: Id;
  assessment: Assessment | null;
  request: AssessRequest | null;
  guideline: GuidelineSet;
  target: number;
}

const MAP_BOX = { width: 130 * MM, height: 236 * MM };
const LEAST_RULER = 96 * MM;
const MOST_RULER = 150 * MM;
// What stands on the page besides map and table: title, caption, key of signs, heading of the table; pixels.
const FURNITURE = 140;

export function mapPart(asked: MapRequest, level: Id): MapPart {
  const { home, round, assessment, request, target } = asked;
  const unit = home.settings.fieldUnit;
  const readings = readingsOf(home, level, round);
  const sheet = sheetFor(levelBounds(home, level, readings), MAP_BOX, EDGE);
  const picture = assessment?.pictures.find((one) => one.level === level) ?? null;
  const plan = planDrawing({ home, level, round, picture, target, sheet, detailed: true, proposed: [] });
  const rulerHeight = Math.min(MOST_RULER, Math.max(plan.height, LEAST_RULER));
  const height = Math.max(plan.height, rulerHeight);
  const mapHeight = request?.levels.find(({ id }) => id === level)?.height ?? home.settings.mapHeight;
  const letters = pieceLetters(home);
  const table = readingTable(home, readings, mapHeight);
  const columns = table.heads.length > 5 ? 2 : 3;
  return {
    level,
    title: `${home.levels[level]!.name}, ${home.rounds[round]!.name.toLowerCase()}`,
    caption: mapCaption(
      sheet.scale,
      home.north === 0,
      lengthText(mapHeight, home.settings.lengthUnit, 1),
      unitName(unit),
    ),
    note: home.rounds[round]!.note,
    plan,
    ruler: rulerDrawing({
      height: rulerHeight,
      unit,
      mains: home.settings.mains,
      guideline: asked.guideline,
      target,
      readings: readings.filter(({ excluded, limit }) => !excluded && !limit).map(({ value }) => value),
      pieces: (assessment?.pieces ?? [])
        .filter(({ id }) => home.pieces[id]?.level === level && letters[id])
        .map(({ id, mean }) => ({ letter: letters[id]!, value: mean })),
    }),
    signs: keyOfSigns({
      home,
      level,
      round,
      readings,
      target: picture && `${reportWords.target} ${edgeText(target, unit)} ${unitName(unit)}`,
      hatched: plan.clips.hatched !== '',
      sources: sourcesSeen(home, level, sheet.camera),
    }),
    readingsTitle: readingsTitle(home, readings),
    columns,
    readings: blocksOf(table, columns, PAGE.height - FURNITURE - height, PAGE.height - 60),
    notes: readingNotes(readings),
  };
}

function readingTable(home: Home, readings: readonly Reading[], mapHeight: number): Table {
  const unit = home.settings.fieldUnit;
  const northUp = home.north === 0;
  const heights = readings.some(({ height }) => Math.abs(height - mapHeight) > 1e-9);
  const meters = new Set(readings.map((reading) => meterOf(home, reading)?.id)).size > 1;
  const right = true as const;
  return {
    heads: [
      { text: 'no.', right },
      { text: northUp ? 'east, m' : 'x, m', right },
      { text: northUp ? 'north, m' : 'y, m', right },
      ...(heights ? [{ text: 'height, m', right }] : []),
      ...(meters ? [{ text: 'meter' }] : []),
      { text: unitName(unit), right, strong: true as const },
    ],
    rows: readings.map((reading) => [
      numberOf(reading.id) + (hasNote(reading) ? '*' : ''),
      fixedText(reading.at[0], 2),
      fixedText(reading.at[1], 2),
      ...(heights ? [fixedText(reading.height, 2)] : []),
      ...(meters ? [meterOf(home, reading)?.name || '—'] : []),
      fullReadingText(reading, unit, home),
    ]),
  };
}

const hasNote = ({ excluded, taken, note }: Reading): boolean =>
  excluded !== '' || taken === 'peak' || note !== '';

function readingsTitle(home: Home, readings: readonly Reading[]): string {
  const names = new Set(readings.map((reading) => meterOf(home, reading)?.name).filter(Boolean));
  return names.size === 1
    ? `${reportWords.readings}, as shown by the ${[...names][0]}`
    : `${reportWords.readings}, as shown`;
}
