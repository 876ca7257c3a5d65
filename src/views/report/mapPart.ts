import type { AssessRequest, Assessment } from '../../engine/assess';
import type { GuidelineSet } from '../../engine/judging/guidelines';
import type { Home, Id } from '../../home/home';
import { alikeSentence } from '../../words/basis';
import { edgeText, pieceLetters } from '../../words/canvas';
import { lengthText, unitName } from '../../words/numbers';
import { mapCaption, readingNotes, reportWords } from '../../words/report';
import { onlyMeter } from './basisPart';
import type { Drawing } from './drawing';
import { keyOfSigns, type KeySign } from './keyOfSigns';
import { EDGE, SIDE_NUMERALS } from './metreFrame';
import { MM, PAGE, sheetFor } from './paper';
import { levelBounds, sourcesSeen } from './planBounds';
import { planDrawing, readingsOf } from './planDrawing';
import { pictureLines, targetLines } from '../canvas/pictureLines';
import { readingTable } from './readingTable';
import { rulerDrawing, RULER_WIDTH } from './rulerDrawing';
import type { Table } from './table';

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
  readings: Table;
  /** What is alike for all of them, and what is particular about some. */
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

// The map takes what the ruler and its own numerals leave of the page's width.
const MAP_BOX = { width: PAGE.width - RULER_WIDTH - SIDE_NUMERALS, height: 222 * MM };
const LEAST_RULER = 96 * MM;
const MOST_RULER = 150 * MM;

export function mapPart(asked: MapRequest, level: Id): MapPart {
  const { home, round, assessment, request, target } = asked;
  const unit = home.settings.fieldUnit;
  const readings = readingsOf(home, level, round);
  const sheet = sheetFor(levelBounds(home, level, readings), MAP_BOX, EDGE);
  const picture = assessment?.pictures.find((one) => one.level === level) ?? null;
  const plan = planDrawing({ home, level, round, picture, target, sheet, detailed: true, proposed: [] });
  const rulerHeight = Math.min(MOST_RULER, Math.max(plan.height, LEAST_RULER));
  const mapHeight = request?.levels.find(({ id }) => id === level)?.height ?? home.settings.mapHeight;
  const letters = pieceLetters(home);
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
      target:
        picture && targetLines(picture, target).length > 0
          ? `${reportWords.target} ${edgeText(target, unit)} ${unitName(unit)}`
          : null,
      numbered: plan.numbered > 0,
      contour:
        picture && pictureLines(picture, target).some(({ lines }) => lines.length > 0)
          ? `${reportWords.contour}, ${unitName(unit)}`
          : null,
      hatched: plan.clips.hatched !== '',
      sources: sourcesSeen(home, level, sheet.camera),
    }),
    readings: readingTable(home, readings),
    notes:
      readings.length === 0
        ? []
        : [alikeSentence(home, readings, onlyMeter(home, readings)), ...readingNotes(readings, unit)],
  };
}
