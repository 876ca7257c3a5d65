import type { LevelPicture } from '../../engine/assess';
import type { Camera } from '../../editor/editor';
import { toPlan, toScreen } from '../../editor/camera';
import { containsEvenOdd } from '../../engine/geometry/polygon';
import { bilinear } from '../../engine/grid/grid';
import type { Point, Ring } from '../../engine/geometry/point';
import { contourLabel, type ContourLabel } from './drawing/contourLabels';
import { besideDot, Crowd, placeLabels, type Box, type LabelWish } from './drawing/labelPlaces';
import { namePlaces } from './drawing/namePlaces';
import type { ContourLine } from './drawing/contourLines';
import { FRAME } from './paintFrame';

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
  /** What no label may cover: discs, signs, furniture; pixels. `soft` ones only where there is another place. */
  taken: { hard: readonly Box[]; soft: readonly Box[] };
  names: readonly NameWish[];
  sources: readonly LabelWish[];
  values: readonly ValueWish[];
  contours: readonly ContourWish[];
  picture: LevelPicture | null;
  floor: readonly Ring[];
}

export interface PlacedLabels {
  names: Map<string, Box>;
  sources: Map<string, Box>;
  values: Map<string, Box>;
  contours: PlacedContour[];
}

const CONTOUR_HEIGHT = 13;

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
  for (const box of request.taken.hard) crowd.add(box);
  const names = layNames(request, crowd, sheet);
  const sources = placeLabels(request.sources, crowd, sheet);
  const values = placeLabels(
    request.values.map(({ id, at, width, height }) => {
      const [x, y] = toScreen(camera, at);
      return { id, places: besideDot(x, y, width, height) };
    }),
    crowd,
    sheet,
  );
  return { names, sources, values, contours: layContours(request, crowd, sheet) };
}

function layNames({ camera, names, taken }: LabelRequest, crowd: Crowd, sheet: Box): Map<string, Box> {
  const furniture = new Crowd();
  for (const box of taken.soft) furniture.add(box);
  const placed = new Map<string, Box>();
  for (const { id, outline, width, height } of names) {
    const places = namePlaces(
      outline,
      width,
      height,
      (p) => toScreen(camera, p),
      (x, y) => toPlan(camera, x, y),
    );
    const clear = places.filter((box) => furniture.isFree(box));
    const [box] = placeLabels([{ id, places: [...clear, ...places] }], crowd, sheet).values();
    if (box) placed.set(id, box);
  }
  return placed;
}

function layContours(
  { camera, contours, picture, floor }: LabelRequest,
  crowd: Crowd,
  sheet: Box,
): PlacedContour[] {
  if (!picture) return [];
  const allowed = (x: number, y: number) => {
    const at = toPlan(camera, x, y);
    return bilinear(picture.grid, picture.doubt, at) <= 1 && containsEvenOdd(floor, at);
  };
  return contours.flatMap(({ text, value, width, lines, isTarget }) =>
    lines.flatMap(({ points }) => {
      const line = points.map((p) => toScreen(camera, p));
      const label = contourLabel(line, width, CONTOUR_HEIGHT, crowd, sheet, allowed);
      return label ? [{ ...label, text, value, width, isTarget }] : [];
    }),
  );
}
