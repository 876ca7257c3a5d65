import type { LevelPicture } from '../../engine/assess';
import type { Camera } from '../../editor/editor';
import { toPlan, toScreen } from '../../editor/camera';
import { bilinear } from '../../engine/grid/grid';
import type { Point, Ring } from '../../engine/geometry/point';
import { contourLabel, type ContourLabel } from './drawing/contourLabels';
import { besideDot, Crowd, inside, placeLabels, type Box, type LabelWish } from './drawing/labelPlaces';
import { namePlaces } from './drawing/namePlaces';
import type { ContourLine } from './drawing/contourLines';
import { FRAME } from './paintFrame';
import type { PlanGeometry } from './planGeometry';

/** A room's name with the lines under it, measured. */
export interface NameWish {
  id: string;
  outline: Ring;
  width: number;
  height: number;
}

/** A reading's value, measured. */
export interface ValueWish {
  id: string;
  at: Point;
  width: number;
  height: number;
}

export interface ContourWish {
  text: string;
  value: number;
  width: number;
  lines: readonly ContourLine[];
  isTarget: boolean;
}

export interface PlacedContour extends ContourLabel {
  text: string;
  value: number;
  width: number;
  isTarget: boolean;
}

export interface LabelRequest {
  camera: Camera;
  /**
   * What stands on the sheet, pixels. Nothing covers discs and signs; names keep off furniture where they can, and off
   * lines where there is still a place.
   */
  signs: readonly Box[];
  furniture: readonly Box[];
  strokes: readonly Box[];
  names: readonly NameWish[];
  sources: readonly LabelWish[];
  values: readonly ValueWish[];
  contours: readonly ContourWish[];
  picture: LevelPicture | null;
  plan: Pick<PlanGeometry, 'isFloor' | 'isWall'>;
}

export interface PlacedLabels {
  names: Map<string, Box>;
  sources: Map<string, Box>;
  values: Map<string, Box>;
  contours: PlacedContour[];
}

const CONTOUR_HEIGHT = 13;
/** Beside a name, or a reading's value would be read as part of it. */
const GAP = 8;

/** Places all lettering of the sheet: names first, then sources, the values of readings, and contours. */
export function layLabels(request: LabelRequest): PlacedLabels {
  const { camera } = request;
  const sheet: Box = {
    x: FRAME + 2,
    y: FRAME + 2,
    width: camera.width - 2 * FRAME - 4,
    height: camera.height - 2 * FRAME - 4,
  };
  const crowd = new Crowd();
  for (const box of request.signs) crowd.add(box);
  const names = layNames(request, crowd, sheet);
  const onWall = wallTest(request);
  const sources = placeLabels(request.sources, crowd, sheet, onWall);
  const values = placeLabels(
    request.values.map(({ id, at, width, height }) => {
      const [x, y] = toScreen(camera, at);
      return { id, places: besideDot(x, y, width, height) };
    }),
    crowd,
    sheet,
    onWall,
  );
  // A contour's label would be lost among the strokes of a bed.
  for (const box of request.furniture) crowd.add(box);
  return { names, sources, values, contours: layContours(request, crowd, sheet) };
}

/** Whether a label would lie across a wall. */
function wallTest({ camera, plan }: LabelRequest): (box: Box) => boolean {
  return ({ x, y, width, height }) =>
    [0.1, 0.5, 0.9].some((share) => plan.isWall(...toPlan(camera, x + width * share, y + height / 2)));
}

function layNames(request: LabelRequest, crowd: Crowd, sheet: Box): Map<string, Box> {
  const { camera, names } = request;
  const furniture = crowdOf(request.furniture);
  const strokes = crowdOf(request.strokes);
  const placed = new Map<string, Box>();
  for (const { id, outline, width, height } of names) {
    const places = namePlaces(
      outline,
      width,
      height,
      (p) => toScreen(camera, p),
      (x, y) => toPlan(camera, x, y),
    );
    const box = bestPlace(places, crowd, sheet, furniture, strokes);
    if (!box) continue;
    crowd.add({ ...box, x: box.x - GAP, width: box.width + 2 * GAP });
    placed.set(id, box);
  }
  return placed;
}

/** The first place clear of everything, else the first clear of furniture, else the first that is free at all. */
function bestPlace(
  places: Iterable<Box>,
  crowd: Crowd,
  sheet: Box,
  furniture: Crowd,
  strokes: Crowd,
): Box | undefined {
  let free: Box | undefined;
  let clear: Box | undefined;
  for (const box of places) {
    if (!inside(box, sheet) || !crowd.isFree(box)) continue;
    free ??= box;
    if (!furniture.isFree(box)) continue;
    clear ??= box;
    if (strokes.isFree(box)) return box;
  }
  return clear ?? free;
}

function crowdOf(boxes: readonly Box[]): Crowd {
  const crowd = new Crowd();
  for (const box of boxes) crowd.add(box);
  return crowd;
}

function layContours(
  { camera, contours, picture, plan }: LabelRequest,
  crowd: Crowd,
  sheet: Box,
): PlacedContour[] {
  if (!picture) return [];
  const allowed = (x: number, y: number) => {
    const at = toPlan(camera, x, y);
    return plan.isFloor(...at) && !plan.isWall(...at) && bilinear(picture.grid, picture.doubt, at) <= 1;
  };
  return contours.flatMap(({ text, value, width, lines, isTarget }) =>
    lines.flatMap(({ points }) => {
      const line = points.map((p) => toScreen(camera, p));
      const label = contourLabel(line, width, CONTOUR_HEIGHT, crowd, sheet, allowed);
      return label ? [{ ...label, text, value, width, isTarget }] : [];
    }),
  );
}
