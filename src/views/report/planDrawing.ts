import type { LevelPicture } from '../../engine/assess';
import type { PlacedPiece } from '../../engine/arranging/arrange';
import { BAND_EDGES } from '../../engine/contours/thresholds';
import { cut } from '../../engine/geometry/outline';
import { bounds } from '../../engine/geometry/polygon';
import type { Ring } from '../../engine/geometry/point';
import { toScreen } from '../../editor/camera';
import type { Camera } from '../../editor/editor';
import type { Home, Id, Piece, Reading } from '../../home/home';
import { firstOf, inOrder } from '../../home/order';
import { canvasWords, pieceLetters } from '../../words/canvas';
import { HATCH, hatchLines } from '../canvas/drawing/hatchLines';
import { letterPlace } from '../canvas/drawing/pieceLines';
import { contourInk, paper, PRINT_INK as INK, tint } from '../canvas/ink';
import { pictureLines, targetLines } from '../canvas/pictureLines';
import { planGeometry, type PlanGeometry } from '../canvas/planGeometry';
import { EDGE, metreFrame, NUMERALS, SIDE_NUMERALS } from './metreFrame';
import {
  circlePath,
  linePath,
  rectanglePath,
  ringsPath,
  sheetPath,
  type Drawing,
  type Mark,
  type OnSheet,
} from './drawing';
import { letteringMarks } from './lettering';
import type { Sheet } from './paper';
import { CHAIN, leftPlaceMarks, lineMarks, northMarks, pieceMarks, readingMarks, sourceMarks } from './signs';

/** What a plan of the report shows of one level. */
export interface PlanRequest {
  home: Home;
  level: Id;
  round: Id;
  picture: LevelPicture | null;
  /** µT */
  target: number;
  sheet: Sheet;
  /** The metre frame with north and numerals, every reading with its value, and values on the contours. */
  detailed: boolean;
  /** Pieces drawn where they are proposed to stand, with the places they leave. */
  proposed: readonly PlacedPiece[];
}

/** A plan, and how many of its readings stand with their number in place of a value. */
export interface PlanDrawing extends Drawing {
  numbered: number;
}

const CONTOUR_WIDTHS = { edge: 0.7, strong: 0.85, between: 0.4 } as const;
const WALL_CASING = 1.2;

/** The plan of one level as it is printed: every area a vector fill, every word text. */
export function planDrawing(request: PlanRequest): PlanDrawing {
  const { home, level, picture, sheet, detailed } = request;
  const { camera } = sheet;
  const onSheet: OnSheet = (p) => toScreen(camera, p);
  const plan = planGeometry(home, level);
  const edge = detailed ? EDGE : 0;
  const shown = picture ? cut(plan.floor, picture.unsupported) : [];
  const hatched = picture ? cut(plan.floor, shown) : [];
  const readings = detailed ? readingsOf(home, level, request.round) : [];
  const lettering = letteringMarks(request, plan, readings);
  return {
    numbered: lettering.numbered,
    left: detailed ? SIDE_NUMERALS : 0,
    width: camera.width + (detailed ? SIDE_NUMERALS : 0),
    height: camera.height + (detailed ? NUMERALS : 0),
    clips: {
      sheet: rectanglePath(edge, edge, camera.width - 2 * edge, camera.height - 2 * edge),
      floor: ringsPath(plan.floor, onSheet),
      shown: ringsPath(shown, onSheet),
      hatched: ringsPath(hatched, onSheet),
    },
    marks: [
      ...[
        ...(picture ? estimateMarks(picture, request.target, onSheet) : []),
        ...hatchMarks(hatched, onSheet),
        ...builtMarks(plan, onSheet),
        ...inOrder(home.sources)
          .filter((source) => source.level === level)
          .flatMap((source) => sourceMarks(source, camera)),
        ...furnitureMarks(request, onSheet),
        ...readings.flatMap((reading) =>
          readingMarks(reading, supplyOff(home, request.round), onSheet(reading.at)),
        ),
        ...lettering.marks,
      ].map((mark): Mark => ({ clip: 'sheet', ...mark })),
      ...(detailed ? metreFrame(camera) : []),
      ...(detailed && home.north !== 0 ? northCorner(camera, home.north) : []),
    ],
  };
}

/** The needle under its N, upper right within the frame. */
function northCorner({ width }: Camera, north: number): Mark[] {
  const x = width - EDGE - 16;
  return [
    { is: 'area', d: circlePath(x, EDGE + 22, 15), fill: paper(INK), opacity: 0.72 },
    {
      is: 'text',
      text: canvasWords.north,
      x,
      y: EDGE + 14,
      hand: { size: 9, weight: 650, fill: INK.text, anchor: 'middle' },
    },
    ...northMarks([x, EDGE + 26], north),
  ];
}

/** The readings of a round on a level; those without a round belong to the first. */
export function readingsOf(home: Home, level: Id, round: Id): Reading[] {
  const first = firstOf(home.rounds)?.id;
  return inOrder(home.readings).filter(
    (reading) => reading.level === level && (reading.round ?? first) === round,
  );
}

const supplyOff = (home: Home, round: Id): boolean => home.rounds[round]?.kind === 'supplyOff';

function estimateMarks(picture: LevelPicture, target: number, onSheet: OnSheet): Mark[] {
  const bands = picture.contours.flatMap(({ value, polygons }): Mark[] => {
    const band = BAND_EDGES.findIndex((one) => one === value);
    if (band < 0 || polygons.length === 0) return [];
    return [{ is: 'area', d: ringsPath(polygons.flat(), onSheet), fill: tint(INK, band), clip: 'floor' }];
  });
  const contours = pictureLines(picture, target).flatMap(({ value, kind, lines }): Mark[] => {
    const d = lines.map(({ points, closed }) => linePath(points, onSheet, closed)).join('');
    if (d === '') return [];
    const line: Mark = {
      is: 'line',
      d,
      stroke: contourInk(INK, value),
      width: CONTOUR_WIDTHS[kind],
      clip: 'shown',
    };
    return [kind === 'between' ? { ...line, opacity: 0.5 } : line];
  });
  const d = targetLines(picture, target)
    .map(({ points, closed }) => linePath(points, onSheet, closed))
    .join('');
  const chain: Mark[] =
    d === ''
      ? []
      : [
          { is: 'line', d, stroke: paper(INK), width: 3, clip: 'shown' },
          { is: 'line', d, stroke: INK.text, width: 1.2, dash: CHAIN, clip: 'shown' },
        ];
  return [...bands, ...contours, ...chain];
}

function hatchMarks(hatched: readonly Ring[], onSheet: OnSheet): Mark[] {
  if (hatched.length === 0) return [];
  const box = bounds(hatched.flat().map((p) => onSheet(p)));
  const d = hatchLines(box, onSheet([0, 0]), 5).map((stroke) => sheetPath(stroke, false));
  const area = ringsPath(hatched, onSheet);
  return [
    { is: 'area', d: area, fill: paper(INK) },
    { is: 'line', d: d.join(''), stroke: INK.hatch, width: HATCH.line * 0.75, clip: 'hatched' },
    { is: 'line', d: area, stroke: INK.hatch, width: 0.7 },
  ];
}

function builtMarks(plan: PlanGeometry, onSheet: OnSheet): Mark[] {
  const walls = ringsPath(plan.walls, onSheet);
  return [
    ...plan.grounds.map((ring): Mark => ({
      is: 'line',
      d: linePath(ring, onSheet, true),
      stroke: INK.text2,
      width: 0.8,
      dash: [1, 2],
    })),
    ...lineMarks(plan.fixtures, onSheet, INK.wall, 0),
    { is: 'line', d: walls, stroke: paper(INK), width: 2 * WALL_CASING },
    { is: 'area', d: walls, fill: INK.wall },
    ...lineMarks(plan.openings, onSheet, INK.wall, 0.8),
  ];
}

/**
 * Furniture where it stands; where a place is proposed, the old one dashed beneath all others, and the way dotted from
 * where the letter was to where it is.
 */
function furnitureMarks({ home, level, proposed }: PlanRequest, onSheet: OnSheet): Mark[] {
  const letters = pieceLetters(home);
  const moved = new Map(proposed.filter(({ moves }) => moves).map((placed) => [placed.id, placed]));
  const left: Mark[] = [];
  const standing: Mark[] = [];
  const ways: Mark[] = [];
  const accented: Mark[] = [];
  for (const piece of inOrder(home.pieces)) {
    const placed = moved.get(piece.id);
    if (!placed) {
      if (piece.level === level) standing.push(...pieceMarks(piece, letters[piece.id], onSheet));
      continue;
    }
    if (piece.level === level) left.push(...leftPlaceMarks(piece, onSheet));
    if (placed.level !== level) continue;
    const there: Piece = { ...piece, level, at: placed.at, angle: placed.angle };
    if (piece.level === level) ways.push(...wayMarks(piece, there, onSheet));
    accented.push(...pieceMarks(there, letters[piece.id], onSheet, INK.accent));
  }
  return [...left, ...standing, ...ways, ...accented];
}

function wayMarks(from: Piece, to: Piece, onSheet: OnSheet): Mark[] {
  const d = linePath([letterPlace(from), letterPlace(to)], onSheet);
  return [
    { is: 'line', d, stroke: paper(INK), width: 2.6 },
    { is: 'line', d, stroke: INK.accent, width: 1, dash: [1.2, 2.6] },
  ];
}
