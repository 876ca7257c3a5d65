import { bounds } from '../../engine/geometry/polygon';
import type { Piece, Reading } from '../../home/home';
import { pieceLetters } from '../../words/canvas';
import type { Box } from './drawing/labelPlaces';
import { letterPlace } from './drawing/pieceLines';
import { rectangle } from '../../engine/geometry/pose';
import { layLabels } from './labels';
import {
  contourWishes,
  nameWishes,
  paintContourLabels,
  paintNames,
  paintValues,
  valueWishes,
} from './paintLabels';
import { paintLeftPlace, paintPiece } from './paintPiece';
import { paintReading } from './paintReading';
import { paintSource } from './paintSource';
import { paintSourceNames, sourceNames } from './sourceNames';
import { paintSections, paintWalks } from './paintWalks';
import { ghostsOf, levelOf, roundReadings, type Scene } from './scene';
import { SHOWN } from './shown';
import { onSheet, type Sheet } from './sheet';

const LETTER = 21;
const SIGN = 20;
const DOT = 8;
const SMALL_DOT = 2;

/** Furniture, sources, readings, and all lettering on the plan. */
export function paintObjects(sheet: Sheet, scene: Scene): void {
  const shown = SHOWN[scene.view.stage];
  const { pieces, sources, walks } = levelOf(scene.home, scene.view.level);
  const letters = pieceLetters(scene.home);
  const leaving = new Set(ghostsOf(scene).map(({ piece }) => piece.id));
  const readings = shown.readings === 'none' ? [] : roundReadings(scene.home, scene.view);

  for (const source of sources) paintSource(sheet, source);
  for (const piece of pieces) {
    if (leaving.has(piece.id)) paintLeftPlace(sheet, piece);
    else paintPiece(sheet, piece, letters[piece.id]);
  }
  if (shown.walks) paintWalks(sheet, walks);
  if (shown.sections) paintSections(sheet, walks);
  const isSupplyOff = scene.home.rounds[scene.view.round]?.kind === 'supplyOff';
  for (const reading of readings)
    paintReading(sheet, reading, isSupplyOff, shown.readings === 'dots' ? SMALL_DOT : undefined);

  const names = nameWishes(sheet, scene);
  const values = shown.readings === 'values' ? valueWishes(sheet, scene, readings) : [];
  const named = scene.form === 'phone' ? [] : sourceNames(sheet, sources);
  const contours = contourWishes(sheet, scene);
  const placed = layLabels({
    camera: sheet.camera,
    taken: {
      hard: [
        ...pieces
          .filter((piece) => letters[piece.id] && !leaving.has(piece.id))
          .map((piece) => discBox(sheet, piece)),
        ...ghostsOf(scene).map(({ ghost }) => discBox(sheet, ghost)),
        ...sources
          .filter(({ kind, path }) => kind === 'point' && path[0])
          .map(({ path }) => around(onSheet(sheet, path[0]!), SIGN)),
        ...readings.map((reading) => dotBox(sheet, reading)),
      ],
      soft: [...pieces, ...ghostsOf(scene).map(({ ghost }) => ghost)].map((piece) => pieceBox(sheet, piece)),
    },
    names,
    sources: named.map(({ id, places }) => ({ id, places: places.map(({ box }) => box) })),
    values,
    contours,
    picture: scene.picture,
    floor: scene.plan.floor,
  });
  paintContourLabels(sheet, placed.contours);
  paintNames(sheet, scene, names, placed.names);
  paintValues(sheet, values, placed.values);
  paintSourceNames(sheet, named, placed.sources);
}

const around = ([x, y]: readonly [number, number], size: number): Box => ({
  x: x - size / 2,
  y: y - size / 2,
  width: size,
  height: size,
});

const discBox = (sheet: Sheet, piece: Piece): Box => around(onSheet(sheet, letterPlace(piece)), LETTER);

const dotBox = (sheet: Sheet, reading: Reading): Box => around(onSheet(sheet, reading.at), DOT);

function pieceBox(sheet: Sheet, piece: Piece): Box {
  const { x0, y0, x1, y1 } = bounds(rectangle(piece, piece.size).map((p) => onSheet(sheet, p)));
  return { x: x0 - 3, y: y0 - 3, width: x1 - x0 + 6, height: y1 - y0 + 6 };
}
