import type { Point } from '../home/home';
import type { Camera } from './editor';

/** CSS pixels per metre: from the widest plot that fits a phone to a hair's breadth of a wall. */
const LEAST_SCALE = 0.3;
const MOST_SCALE = 1200;
/** What an empty home shows: a sheet of 12 × 9 m. */
const SHEET = { x0: 0, y0: 0, x1: 12, y1: 9 };
/** Paper left free round the plan, CSS pixels. */
const MARGIN = 36;
/** The upper right corner of the sheet that belongs to the needle pointing north, CSS pixels. */
const NEEDLE = { width: 54, height: 64 };

export const START_CAMERA: Camera = { centre: [6, 4.5], scale: 60, width: 0, height: 0 };

export function toPlan(camera: Camera, x: number, y: number): Point {
  return [
    camera.centre[0] + (x - camera.width / 2) / camera.scale,
    camera.centre[1] - (y - camera.height / 2) / camera.scale,
  ];
}

export function toScreen(camera: Camera, at: Point): [number, number] {
  return [
    (at[0] - camera.centre[0]) * camera.scale + camera.width / 2,
    camera.height / 2 - (at[1] - camera.centre[1]) * camera.scale,
  ];
}

const limited = (scale: number) => Math.min(MOST_SCALE, Math.max(LEAST_SCALE, scale));

/** Zooms so that the plan point under the screen point stays under it. */
export function zoomedAbout(camera: Camera, factor: number, x: number, y: number): Camera {
  const scale = limited(camera.scale * factor);
  const held = toPlan(camera, x, y);
  const centre: Point = [held[0] - (x - camera.width / 2) / scale, held[1] + (y - camera.height / 2) / scale];
  return { ...camera, scale, centre };
}

/** Moves the paper by screen pixels. */
export function panned(camera: Camera, dx: number, dy: number): Camera {
  const { centre, scale } = camera;
  return { ...camera, centre: [centre[0] - dx / scale, centre[1] + dy / scale] };
}

interface Extent {
  x0: number;
  y0: number;
  x1: number;
  y1: number;
}

/** Shows an extent with some paper free at its left, top and bottom, and another width of it at its right. */
function fittedTo(camera: Camera, { x0, y0, x1, y1 }: Extent, margin: number, right: number): Camera {
  // A single point still deserves a few metres round it.
  const scale = limited(
    Math.min(
      (camera.width - margin - right) / Math.max(2, x1 - x0),
      (camera.height - 2 * margin) / Math.max(2, y1 - y0),
    ),
  );
  return { ...camera, centre: [(x0 + x1) / 2 + (right - margin) / 2 / scale, (y0 + y1) / 2], scale };
}

/** Shows all the given points, clear of the needle, or the empty sheet where there are none. */
export function fitted(camera: Camera, points: readonly Point[]): Camera {
  const extent =
    points.length === 0
      ? SHEET
      : {
          x0: Math.min(...points.map((p) => p[0])),
          y0: Math.min(...points.map((p) => p[1])),
          x1: Math.max(...points.map((p) => p[0])),
          y1: Math.max(...points.map((p) => p[1])),
        };
  const { x0, y0, x1, y1 } = extent;
  if (camera.width <= 0 || camera.height <= 0) return { ...camera, centre: [(x0 + x1) / 2, (y0 + y1) / 2] };
  const margin = Math.min(MARGIN, camera.width / 6, camera.height / 6);
  const plain = fittedTo(camera, extent, margin, margin);
  const [right, top] = toScreen(plain, [x1, y1]);
  const meets = points.length > 0 && right > camera.width - NEEDLE.width && top < NEEDLE.height;
  return meets ? fittedTo(camera, extent, margin, Math.max(margin, NEEDLE.width)) : plain;
}

/** The same centre and scale in a window of another size. */
export function resized(camera: Camera, width: number, height: number): Camera {
  return { ...camera, width, height };
}
