import type { Camera } from '../../editor/editor';
import { toScreen } from '../../editor/camera';
import type { Piece, Reading, Source } from '../../home/home';
import type { Line } from '../canvas/drawing/line';
import { letterPlace, pieceLines } from '../canvas/drawing/pieceLines';
import { clippedSegment, tickedLine } from '../canvas/drawing/sourceLines';
import { paper, PRINT_INK as INK } from '../canvas/ink';
import { circlePath, linePath, sheetPath, type Mark, type OnSheet } from './drawing';

type Place = readonly [number, number];

const PAPER = paper(INK);
const CASING = 1.2;

/** The chain line of the target. */
export const CHAIN = [8, 2.4, 1.6, 2.4] as const;

/** Strokes of a sign: fills, then all casings, then the strokes, so that no casing cuts another stroke. */
export function lineMarks(lines: readonly Line[], onSheet: OnSheet, colour: string, casing = CASING): Mark[] {
  const d = (line: Line) => linePath(line.points, onSheet, line.closed);
  const fills = lines.flatMap((line): Mark[] =>
    line.fill ? [{ is: 'area', d: d(line), fill: PAPER, opacity: line.fill === 'veil' ? 0.1 : 1 }] : [],
  );
  const casings = lines.flatMap((line): Mark[] =>
    casing > 0 && !line.dash
      ? [{ is: 'line', d: d(line), stroke: PAPER, width: line.weight + 2 * casing }]
      : [],
  );
  const strokes = lines.map((line): Mark => {
    const mark: Mark = { is: 'line', d: d(line), stroke: colour, width: line.weight };
    return line.dash ? { ...mark, dash: line.dash } : mark;
  });
  return [...fills, ...casings, ...strokes];
}

/** A disc with a piece's letter: the same on the plan, beside the ruler and in the key. */
export function discMarks([x, y]: Place, letter: string, colour = INK.wall, radius = 7.2): Mark[] {
  return [
    { is: 'area', d: circlePath(x, y, radius + 1.3), fill: PAPER },
    { is: 'area', d: circlePath(x, y, radius), fill: colour },
    {
      is: 'text',
      text: letter,
      x,
      y: y + radius * 0.46,
      hand: { size: radius * 1.35, weight: 700, fill: PAPER, anchor: 'middle' },
    },
  ];
}

export function pieceMarks(
  piece: Piece,
  letter: string | undefined,
  onSheet: OnSheet,
  colour = INK.wall,
): Mark[] {
  const disc = letter ? discMarks(onSheet(letterPlace(piece)), letter, colour) : [];
  return [...lineMarks(pieceLines(piece), onSheet, colour), ...disc];
}

/** Where a piece stands now, when the report proposes another place for it. */
export function leftPlaceMarks(piece: Piece, onSheet: OnSheet): Mark[] {
  const [outline] = pieceLines(piece);
  return [
    {
      is: 'line',
      d: linePath(outline!.points, onSheet, true),
      stroke: INK.text2,
      width: 0.9,
      dash: [3, 2.4],
    },
  ];
}

/** A dot; open with the supply off; a T below the range; struck where it is left out. */
export function readingMarks(
  reading: Pick<Reading, 'limit' | 'excluded'>,
  supplyOff: boolean,
  [x, y]: Place,
): Mark[] {
  if (reading.limit === 'below' && !reading.excluded) {
    const d = `${sheetPath(
      [
        [x - 4, y - 1.5],
        [x + 4, y - 1.5],
      ],
      false,
    )}${sheetPath(
      [
        [x, y - 1.5],
        [x, y + 4],
      ],
      false,
    )}`;
    return [
      { is: 'line', d, stroke: PAPER, width: 3.6 },
      { is: 'line', d, stroke: INK.wall, width: 1.3 },
    ];
  }
  const colour = reading.excluded ? INK.text3 : INK.wall;
  const casing: Mark = { is: 'area', d: circlePath(x, y, 3), fill: PAPER };
  if (!supplyOff && !reading.excluded)
    return [casing, { is: 'area', d: circlePath(x, y, 1.7), fill: colour }];
  const dot: Mark = { is: 'line', d: circlePath(x, y, 1.9), stroke: colour, width: 1 };
  if (!reading.excluded) return [casing, dot];
  return [
    casing,
    dot,
    {
      is: 'line',
      d: sheetPath(
        [
          [x - 4, y + 4],
          [x + 4, y - 4],
        ],
        false,
      ),
      stroke: colour,
      width: 1,
    },
  ];
}

/** The lozenge of a source at a point. */
export function lozengeMarks([x, y]: Place): Mark[] {
  const lozenge = (w: number, h: number) =>
    sheetPath(
      [
        [x, y - h],
        [x + w, y],
        [x, y + h],
        [x - w, y],
      ],
      true,
    );
  return [
    { is: 'area', d: lozenge(6, 8.6), fill: PAPER },
    { is: 'line', d: lozenge(4.8, 7.4), stroke: INK.wall, width: 1.1 },
    { is: 'area', d: lozenge(2, 3.6), fill: INK.wall },
  ];
}

/** A line source between two places of the sheet: dashes with ticks across. */
export function tickedLineMarks(path: readonly Place[]): Mark[] {
  const { dashes, ticks } = tickedLine(path);
  const d = [...dashes, ...ticks].map((stroke) => sheetPath(stroke, false)).join('');
  return [
    { is: 'line', d, stroke: PAPER, width: 3.4 },
    { is: 'line', d, stroke: INK.wall, width: 1 },
  ];
}

export function sourceMarks(source: Source, camera: Camera): Mark[] {
  if (source.kind === 'point') return source.path[0] ? lozengeMarks(toScreen(camera, source.path[0])) : [];
  const box = { x0: -20, y0: -20, x1: camera.width + 20, y1: camera.height + 20 };
  const path = source.path.map((p) => toScreen(camera, p));
  return path.slice(1).flatMap((end, i) => {
    const seen = clippedSegment(path[i]!, end, box);
    return seen ? tickedLineMarks(seen) : [];
  });
}

/** The half-filled needle, turned to where north is from the top of the sheet, degrees counter-clockwise. */
export function northMarks([x, y]: Place, north: number): Mark[] {
  const angle = (-north * Math.PI) / 180;
  const turned = ([dx, dy]: Place): Place => [
    x + dx * Math.cos(angle) - dy * Math.sin(angle),
    y + dx * Math.sin(angle) + dy * Math.cos(angle),
  ];
  const half = (side: number) =>
    sheetPath(
      (
        [
          [0, -9],
          [side * 3, 9],
          [0, 6.5],
        ] as const
      ).map(turned),
      true,
    );
  return [
    { is: 'area', d: half(1), fill: INK.text },
    { is: 'line', d: half(-1), stroke: INK.text, width: 0.6 },
  ];
}
