import { toScreen } from '../../editor/camera';
import type { Camera } from '../../editor/editor';
import type { Point } from '../../home/home';
import type { Line } from './drawing/line';
import { paper, type Ink } from './ink';

/** What a painter paints on: a context in CSS pixels, the camera, and the inks of the moment. */
export interface Sheet {
  context: CanvasRenderingContext2D;
  camera: Camera;
  ink: Ink;
}

export type Screen = [number, number];

export const onSheet = (sheet: Sheet, at: Point): Screen => toScreen(sheet.camera, at);

/** Makes plan metres the unit of the paths that `paint` lays; line widths and dashes must be divided by the scale. */
export function inPlan({ context, camera }: Sheet, paint: (pixel: number) => void): void {
  const [x, y] = toScreen(camera, [0, 0]);
  context.save();
  context.transform(camera.scale, 0, 0, -camera.scale, x, y);
  paint(1 / camera.scale);
  context.restore();
}

/** Lays a path through screen places. */
export function trace(context: CanvasRenderingContext2D, places: readonly Screen[], closed = false): void {
  context.beginPath();
  places.forEach(([x, y], i) => (i === 0 ? context.moveTo(x, y) : context.lineTo(x, y)));
  if (closed) context.closePath();
}

export interface Stroke {
  colour: string;
  width: number;
  dash?: readonly number[];
}

/** Strokes the current path, first its casing in paper where one is given. */
export function strokePath({ context, ink }: Sheet, { colour, width, dash }: Stroke, casing = 0): void {
  if (casing > 0) {
    context.setLineDash([]);
    context.strokeStyle = paper(ink);
    context.lineWidth = width + 2 * casing;
    context.stroke();
  }
  context.setLineDash(dash ? [...dash] : []);
  context.strokeStyle = colour;
  context.lineWidth = width;
  context.stroke();
  context.setLineDash([]);
}

// Hairlines and the strokes inside a sign need no casing: they say nothing alone.
const CASED = 1.5;

/** Paints the strokes of a sign: casings first, so that no stroke's casing cuts another stroke. */
export function paintLines(sheet: Sheet, lines: readonly Line[], colour: string, casing = 1.6): void {
  const { context, ink } = sheet;
  const lay = (line: Line) =>
    trace(
      context,
      line.points.map((p) => onSheet(sheet, p)),
      line.closed,
    );
  for (const line of lines) {
    if (!line.fill) continue;
    lay(line);
    context.globalAlpha = line.fill === 'veil' ? 0.1 : 1;
    context.fillStyle = paper(ink);
    context.fill();
    context.globalAlpha = 1;
  }
  if (casing > 0) {
    for (const line of lines) {
      if (line.dash || line.weight < CASED) continue;
      lay(line);
      strokePath(sheet, { colour: paper(ink), width: line.weight + 2 * casing });
    }
  }
  for (const line of lines) {
    lay(line);
    strokePath(sheet, { colour, width: line.weight, dash: line.dash });
  }
}
