import { bounds, containsEvenOdd } from '../../engine/geometry/polygon';
import { MOVES } from '../../editor/stages';
import type { Piece, Point } from '../../home/home';
import { KINDS } from '../../home/kinds/kinds';
import { pieceLetters } from '../../words/canvas';
import { boxesAlong, type Box } from './drawing/labelPlaces';
import { clippedSegment } from './drawing/sourceLines';
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
import { northBox } from './paintNorth';
import type { PlanGeometry } from './planGeometry';
import { flagBox, flaggedPieces } from './paintFlag';
import { paintLeftPlace, paintPiece } from './paintPiece';
import { paintReading } from './paintReading';
import { paintSource } from './paintSource';
import { middleOf, paintSuspects } from './paintSuspects';
import { paintSourceNames, sourceNames } from './sourceNames';
import { paintSections, paintWalks, sectionEnds } from './paintWalks';
import { ghostsOf, levelOf, roundReadings, type Scene } from './scene';
import { SHOWN } from './shown';
import { onSheet, type Screen, type Sheet } from './sheet';

const LETTER = 21;
const SIGN = 20;
const DOT = 8;
const STROKE = 6;
const SMALL_DOT = 2;

/** Furniture, sources, readings, and all lettering on the plan. */
export function paintObjects(sheet: Sheet, scene: Scene): void {
  const shown = SHOWN[scene.view.stage];
  const { pieces, sources, walks } = levelOf(scene.home, scene.view.level);
  const letters = pieceLetters(scene.home);
  const ghosts = ghostsOf(scene).map(({ ghost }) => ghost);
  const leaving = new Set(ghosts.map(({ id }) => id));
  const staying = pieces.filter(({ id }) => !leaving.has(id));
  const discs = [...staying, ...ghosts].filter(({ id }) => letters[id]);
  const points = sources.filter(({ kind, path }) => kind === 'point' && path[0]);
  const readings = shown.readings === 'none' ? [] : roundReadings(scene.home, scene.view);

  for (const source of sources) paintSource(sheet, source);
  for (const piece of pieces) {
    if (leaving.has(piece.id)) paintLeftPlace(sheet, piece);
    else paintPiece(sheet, piece, letters[piece.id]);
  }
  if (shown.walks) paintWalks(sheet, walks);
  if (shown.sections) paintSections(sheet, walks);
  paintSuspects(sheet, scene.suspects);
  const isSupplyOff = scene.home.rounds[scene.view.round]?.kind === 'supplyOff';
  for (const reading of readings)
    paintReading(sheet, reading, isSupplyOff, shown.readings === 'dots' ? SMALL_DOT : undefined);

  const names = nameWishes(sheet, scene);
  const values = shown.readings === 'values' ? valueWishes(sheet, scene, readings) : [];
  const named = scene.form === 'phone' ? [] : sourceNames(sheet, sources);
  const contours = contourWishes(sheet, scene);
  const placed = layLabels({
    camera: sheet.camera,
    signs: [
      northBox(sheet.camera),
      ...turnHandles(scene).map((at) => around(onSheet(sheet, at), SIGN)),
      ...discs.map((piece) => around(onSheet(sheet, letterPlace(piece)), LETTER)),
      ...flaggedPieces(scene).map((piece) => flagBox(sheet, piece)),
      ...points.map(({ path }) => around(onSheet(sheet, path[0]!), SIGN)),
      ...scene.suspects.flatMap(({ path }) => {
        const at = middleOf(sheet, path);
        return at ? [around(at, SIGN)] : [];
      }),
      ...readings.map(({ at }) => around(onSheet(sheet, at), DOT)),
      ...(shown.sections ? walks : []).flatMap((walk) =>
        sectionEnds(sheet, walk).map((at) => around(at, SIGN)),
      ),
    ],
    furniture: [
      ...[...staying, ...ghosts].map((piece) => pieceBox(sheet, piece)),
      ...areaBoxes(sheet, scene),
    ],
    strokes: [
      ...handLines(scene),
      ...(shown.walks || shown.sections ? walks : []).map(({ path }) => path),
      ...sources.filter(({ kind }) => kind === 'line').map(({ path }) => path),
      ...scene.lettered.target.map(({ points: line }) => line),
    ].flatMap((path) => boxesAlong(seenPath(sheet, path), STROKE)),
    names,
    sources: named.map(({ id, places }) => ({ id, places: places.map(({ box }) => box) })),
    values,
    contours,
    picture: scene.lettered.picture,
    plan: underArea(scene),
  });
  paintContourLabels(sheet, placed.contours);
  paintNames(sheet, scene, names, placed.names);
  paintValues(sheet, values, placed.values);
  paintSourceNames(sheet, named, placed.sources);
}

/** Where the piece at hand may stand, and what its rules draw round it: names make way for both. */
const areaBoxes = (sheet: Sheet, { good }: Scene): Box[] =>
  (good?.area.rooms ?? []).flatMap(({ level, may }) =>
    level === good!.level
      ? may.map((ring) =>
          boxRound(
            ring.map((p) => onSheet(sheet, p)),
            3,
          ),
        )
      : [],
  );

function handLines({ atHand, view }: Scene): Point[][] {
  if (!atHand?.shapes || atHand.put.level !== view.level) return [];
  const { strips, landings, routes } = atHand.shapes;
  return [
    ...[...strips, ...landings].map(({ ring }) => [...ring, ring[0]!]),
    ...routes.map((route) => [...route]),
  ];
}

/** Contours of the map are not lettered where the ink is that of a piece. */
function underArea({ plan, good }: Scene): Pick<PlanGeometry, 'isFloor' | 'isWall'> {
  if (!good) return plan;
  const rings = good.area.rooms.flatMap(({ level, may }) => (level === good.level ? may : []));
  return {
    isWall: plan.isWall,
    isFloor: (x, y) => plan.isFloor(x, y) && !containsEvenOdd(rings, [x, y]),
  };
}

/** Where the handle of a selected piece lies: names make way for it. */
function turnHandles({ home, view, selection }: Scene): Point[] {
  const [ref, ...others] = selection;
  if (!ref || others.length > 0 || ref.kind !== 'piece' || !MOVES[view.stage].includes('piece')) return [];
  const piece = home.pieces[ref.id];
  if (!piece || piece.level !== view.level) return [];
  return KINDS.piece.handles(home, piece).flatMap(({ role, at }) => (role === 'turn' ? [at] : []));
}

const around = ([x, y]: readonly [number, number], size: number): Box => ({
  x: x - size / 2,
  y: y - size / 2,
  width: size,
  height: size,
});

/** A path on the sheet, each part cut to what is seen. */
function seenPath(sheet: Sheet, path: readonly Point[]): Screen[] {
  const box = { x0: 0, y0: 0, x1: sheet.camera.width, y1: sheet.camera.height };
  const places = path.map((p) => onSheet(sheet, p));
  return places.slice(1).flatMap((b, i): Screen[] => clippedSegment(places[i]!, b, box) ?? []);
}

function pieceBox(sheet: Sheet, piece: Piece): Box {
  return boxRound(
    rectangle(piece, piece.size).map((p) => onSheet(sheet, p)),
    3,
  );
}

function boxRound(places: readonly Screen[], by: number): Box {
  const { x0, y0, x1, y1 } = bounds(places);
  return { x: x0 - by, y: y0 - by, width: x1 - x0 + 2 * by, height: y1 - y0 + 2 * by };
}
