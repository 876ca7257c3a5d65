import { toScreen } from '../../editor/camera';
import { bounds } from '../../engine/geometry/polygon';
import { rectangle } from '../../engine/geometry/pose';
import type { Point } from '../../engine/geometry/point';
import { inOrder } from '../../home/order';
import type { Home, Piece, Reading, Source } from '../../home/home';
import { edgeText, pieceLetters, planName } from '../../words/canvas';
import { plainReadingText } from '../../words/report';
import { numberOf } from '../../words/things';
import type { ContourWish } from '../canvas/labels';
import { layLabels } from '../canvas/labels';
import { letterPlace } from '../canvas/drawing/pieceLines';
import { besideDot, boxesAlong, type Box } from '../canvas/drawing/labelPlaces';
import { clippedSegment } from '../canvas/drawing/sourceLines';
import type { Camera } from '../../editor/editor';
import { contourLabelInk, paper, PRINT_INK as INK } from '../canvas/ink';
import { pictureLines, targetLines } from '../canvas/pictureLines';
import type { PlanGeometry } from '../canvas/planGeometry';
import { textWidth, type Hand, type Mark } from './drawing';
import { leaderMarks } from './leaders';
import { EDGE } from './metreFrame';
import type { PlanRequest } from './planDrawing';

// 6.5 pt and 6.3 pt: the least that is set on a plan.
const NAME: Hand = {
  size: 8.8,
  weight: 650,
  spaced: 0.1,
  fill: INK.text,
  anchor: 'middle',
  halo: { colour: paper(INK), width: 2.4, opacity: 0.72 },
};
const OUTSIDE: Hand = { ...NAME, italic: true, weight: 500, spaced: 0, size: 9.2 };
const VALUE: Hand = {
  size: 8.4,
  weight: 500,
  fill: INK.text,
  anchor: 'middle',
  halo: { colour: paper(INK), width: 1.8, opacity: 0.72 },
};
const CONTOUR: Hand = { size: 8.4, weight: 500, fill: INK.text, anchor: 'middle' };

/** What is written on a plan, and how many readings have their number there in place of a value. */
export interface Lettering {
  marks: Mark[];
  numbered: number;
}

/** All that is written on a plan: rooms, values of readings, values of contours, names of sources. */
export function letteringMarks(
  request: PlanRequest,
  plan: PlanGeometry,
  readings: readonly Reading[],
): Lettering {
  const { home, level, picture, target, detailed, sheet } = request;
  const { camera } = sheet;
  const unit = home.settings.fieldUnit;
  const rooms = inOrder(home.rooms).filter((room) => room.level === level && room.name !== '');
  const sources = detailed
    ? inOrder(home.sources).filter((source) => source.level === level && source.name !== '')
    : [];
  const handOf = (use: string) => (use === 'grounds' ? OUTSIDE : NAME);
  const contours = picture && detailed ? contourWishes(request) : [];
  const there = onTheSheet(request, readings);
  const placed = layLabels({
    camera,
    ...there,
    names: rooms.map((room) => ({
      id: room.id,
      outline: room.outline,
      width: textWidth(planName(room), handOf(room.use)) + 4,
      height: NAME.size * 1.25,
    })),
    sources: sources.map((source) => ({ id: source.id, places: sourcePlaces(source, camera) })),
    values: readings.map((reading) => ({
      id: reading.id,
      at: reading.at,
      width: textWidth(plainReadingText(reading, unit), VALUE) + 2,
      height: VALUE.size * 1.1,
    })),
    contours,
    picture,
    plan,
  });
  const write = (box: Box | undefined, text: string, hand: Hand): Mark[] =>
    box
      ? [{ is: 'text', text, x: box.x + box.width / 2, y: box.y + box.height / 2 + hand.size * 0.34, hand }]
      : [];
  const numbered = readings
    .filter(({ id }) => !placed.values.has(id))
    .map(({ id, at }) => ({ number: numberOf(id), at: toScreen(camera, at) }));
  const taken = [
    ...there.signs,
    ...placed.names.values(),
    ...placed.sources.values(),
    ...placed.values.values(),
    ...placed.contours.map(({ x, y, width }) => ({
      x: x - width / 2,
      y: y - CONTOUR.size / 2,
      width,
      height: CONTOUR.size,
    })),
  ];
  const within = { x: EDGE, y: EDGE, width: camera.width - 2 * EDGE, height: camera.height - 2 * EDGE };
  const marks = [
    ...placed.contours.map(({ x, y, angle, text, value }): Mark => {
      const { fill, halo } = contourLabelInk(INK, value);
      const turn = (angle * 180) / Math.PI;
      // The base line lies a third of the size beside the contour, across its direction.
      const [dx, dy] = [-Math.sin(angle) * CONTOUR.size * 0.34, Math.cos(angle) * CONTOUR.size * 0.34];
      return {
        is: 'text',
        text,
        x: x + dx,
        y: y + dy,
        hand: { ...CONTOUR, fill, angle: turn, halo: { colour: halo, width: 2 } },
      };
    }),
    ...readings.flatMap((reading) =>
      write(
        placed.values.get(reading.id),
        plainReadingText(reading, unit),
        reading.excluded ? { ...VALUE, fill: INK.text3 } : VALUE,
      ),
    ),
    ...sources.flatMap((source) =>
      write(placed.sources.get(source.id), source.name, { ...VALUE, italic: true }),
    ),
    ...rooms.flatMap((room) => write(placed.names.get(room.id), planName(room), handOf(room.use))),
    ...leaderMarks(numbered, taken, within),
  ];
  return { marks, numbered: numbered.length };

  function contourWishes({ picture: drawn }: PlanRequest): ContourWish[] {
    const wish = (value: number, lines: ContourWish['lines'], isTarget: boolean): ContourWish => {
      const text = edgeText(value, unit);
      return { text, value, width: textWidth(text, CONTOUR) + 3, lines, isTarget };
    };
    return [
      wish(target, targetLines(drawn!, target), true),
      ...pictureLines(drawn!, target).map(({ value, lines }) => wish(value, lines, false)),
    ];
  }
}

/** Beside a point source; beside the middle, or a quarter, of the longest stretch of a line that is on the sheet. */
function sourcePlaces({ name, path }: Source, camera: Camera): Box[] {
  const size = [textWidth(name, VALUE) + 4, VALUE.size * 1.25] as const;
  const places = path.map((p) => toScreen(camera, p));
  if (places.length === 1) return besideDot(...places[0]!, ...size, 9);
  const box = { x0: 0, y0: 0, x1: camera.width, y1: camera.height };
  const seen = places.slice(1).flatMap((end, i) => {
    const part = clippedSegment(places[i]!, end, box);
    return part ? [{ part, length: Math.hypot(part[1][0] - part[0][0], part[1][1] - part[0][1]) }] : [];
  });
  const longest = seen.toSorted((a, b) => b.length - a.length)[0];
  if (!longest) return [];
  const [[ax, ay], [bx, by]] = longest.part;
  return [0.5, 0.75, 0.25, 0.6, 0.4].flatMap((t) =>
    besideDot(ax + (bx - ax) * t, ay + (by - ay) * t, ...size, 5),
  );
}

/** What already stands on the sheet: discs and dots, furniture, and lines that a name keeps off where it can. */
function onTheSheet(
  { home, level, picture, target, proposed, sheet }: PlanRequest,
  readings: readonly Reading[],
): Record<'signs' | 'furniture' | 'strokes', Box[]> {
  const { camera } = sheet;
  const around = (p: Point, half: number): Box => {
    const [x, y] = toScreen(camera, p);
    return { x: x - half, y: y - half, width: 2 * half, height: 2 * half };
  };
  const pieces = standing(home, level, proposed);
  const letters = pieceLetters(home);
  const sources = inOrder(home.sources).filter((source) => source.level === level);
  const lines = [
    ...sources.filter(({ kind }) => kind === 'line').map(({ path }) => path),
    ...(picture ? targetLines(picture, target).map(({ points }) => points) : []),
    ...pieces
      .filter((piece) => piece !== home.pieces[piece.id])
      .map((piece) => [letterPlace(home.pieces[piece.id]!), letterPlace(piece)]),
  ];
  return {
    signs: [
      ...pieces.filter(({ id }) => letters[id]).map((piece) => around(letterPlace(piece), 8.5)),
      ...readings.map((reading) => around(reading.at, 3)),
      ...sources.flatMap(({ kind, path }) => (kind === 'point' && path[0] ? [around(path[0], 8)] : [])),
    ],
    furniture: pieces.map((piece) => {
      const { x0, y0, x1, y1 } = bounds(rectangle(piece, piece.size).map((p) => toScreen(camera, p)));
      return { x: x0, y: y0, width: x1 - x0, height: y1 - y0 };
    }),
    strokes: lines.flatMap((path) => boxesAlong(seenPath(path, camera), 5)),
  };
}

/** A path on the sheet, each part cut to what is seen. */
function seenPath(path: readonly Point[], camera: Camera): (readonly [number, number])[] {
  const box = { x0: 0, y0: 0, x1: camera.width, y1: camera.height };
  const places = path.map((p) => toScreen(camera, p));
  return places.slice(1).flatMap((b, i) => clippedSegment(places[i]!, b, box) ?? []);
}

/** The pieces on a level as drawn: where they are proposed to stand, or where they are. */
function standing(home: Home, level: string, proposed: PlanRequest['proposed']): Piece[] {
  const places = new Map(proposed.filter(({ moves }) => moves).map((placed) => [placed.id, placed]));
  return inOrder(home.pieces)
    .map((piece) => {
      const placed = places.get(piece.id);
      return placed ? { ...piece, level: placed.level, at: placed.at, angle: placed.angle } : piece;
    })
    .filter((piece) => piece.level === level);
}
