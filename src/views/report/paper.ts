import type { Camera } from '../../editor/editor';
import type { Bounds } from '../../engine/geometry/polygon';

/** CSS pixels to a millimetre, on paper as on the screen. */
export const MM = 96 / 25.4;

/** A4 less the margins of 16, 15, 14 and 20 mm; CSS pixels. */
export const PAGE = { width: 175 * MM, height: 267 * MM };

// Those of scale rulers, so that whoever measures on paper has one at hand.
const SCALES = [
  20, 25, 30, 40, 50, 75, 100, 125, 150, 200, 250, 300, 400, 500, 750, 1000, 1500, 2000, 5000, 10_000, 20_000,
] as const;

/** Pixels to a metre of the plan at 1 : scale. */
const perMetre = (scale: number): number => (MM * 1000) / scale;

/** A part of the plan as it lies on paper, with an edge of `edge` pixels round it. */
export interface Sheet {
  /** 100 for 1 : 100; null where the picture is not to be measured. */
  scale: number | null;
  camera: Camera;
}

/**
 * The plan's bounds at the largest true scale that fits a box of pixels; a plan that even the smallest does not fit is
 * cut about its middle.
 */
export function sheetFor(bounds: Bounds, box: { width: number; height: number }, edge: number): Sheet {
  const room = { width: box.width - 2 * edge, height: box.height - 2 * edge };
  const [w, h] = [bounds.x1 - bounds.x0, bounds.y1 - bounds.y0];
  const fits = (scale: number) => w * perMetre(scale) <= room.width && h * perMetre(scale) <= room.height;
  const scale = SCALES.find(fits) ?? SCALES[SCALES.length - 1]!;
  return { scale, camera: cameraOver(bounds, perMetre(scale), edge, room) };
}

/** The plan's bounds as large as a box allows, though never above 1 : 50. */
export function pictureFor(bounds: Bounds, box: { width: number; height: number }): Sheet {
  const fitting = Math.min(
    box.width / (bounds.x1 - bounds.x0),
    box.height / (bounds.y1 - bounds.y0),
    perMetre(50),
  );
  return { scale: null, camera: cameraOver(bounds, fitting, 0, box) };
}

function cameraOver(
  bounds: Bounds,
  scale: number,
  edge: number,
  room: { width: number; height: number },
): Camera {
  return {
    centre: [(bounds.x0 + bounds.x1) / 2, (bounds.y0 + bounds.y1) / 2],
    scale,
    width: Math.min(room.width, (bounds.x1 - bounds.x0) * scale) + 2 * edge,
    height: Math.min(room.height, (bounds.y1 - bounds.y0) * scale) + 2 * edge,
  };
}
