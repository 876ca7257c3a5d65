import type { LevelPicture } from '../../engine/assess';
import { BAND_EDGES } from '../../engine/contours/thresholds';
import { bounds } from '../../engine/geometry/polygon';
import type { Ring } from '../../engine/geometry/point';
import type { ContourLine } from './drawing/contourLines';
import { HATCH, hatchLines } from './drawing/hatchLines';
import { contourInk, paper, tint } from './ink';
import type { DrawnContour } from './pictureLines';
import { layRing } from './planLayer';
import { inPlan, onSheet, strokePath, type Sheet } from './sheet';

export const CHAIN = [11, 3, 2, 3] as const;
const TARGET = 1.7;
const TARGET_CASING = 1.25;
const CONTOUR_WIDTHS = { edge: 0.9, strong: 1.1, between: 0.5 } as const;

/** The estimate of one level: ink by bands, contour lines, the target's chain line, hatch where nothing is known. */
export function paintEstimate(
  sheet: Sheet,
  picture: LevelPicture,
  floor: readonly Ring[],
  contours: readonly DrawnContour[],
  target: readonly ContourLine[],
): void {
  const { context } = sheet;
  context.save();
  clipTo(sheet, floor);
  paintBands(sheet, picture);
  paintContours(sheet, contours);
  paintUnsupported(sheet, picture.unsupported);
  context.save();
  clipOut(sheet, picture.unsupported, floor);
  paintTarget(sheet, target);
  context.restore();
  context.restore();
}

function clipTo(sheet: Sheet, rings: readonly Ring[]): void {
  const { context } = sheet;
  context.beginPath();
  layOnSheet(sheet, rings);
  context.clip('evenodd');
}

/** Keeps to the floor outside the rings. */
function clipOut(sheet: Sheet, rings: readonly Ring[], floor: readonly Ring[]): void {
  const { context, camera } = sheet;
  if (rings.length === 0 || floor.length === 0) return;
  context.beginPath();
  context.rect(-1e5, -1e5, 2e5 + camera.width, 2e5 + camera.height);
  layOnSheet(sheet, rings);
  context.clip('evenodd');
}

function layOnSheet(sheet: Sheet, rings: readonly Ring[]): void {
  for (const ring of rings) {
    ring.forEach((p, i) => {
      const [x, y] = onSheet(sheet, p);
      if (i === 0) sheet.context.moveTo(x, y);
      else sheet.context.lineTo(x, y);
    });
    sheet.context.closePath();
  }
}

/** Band over band, from the lowest up: each covers the area at or above its edge. */
function paintBands(sheet: Sheet, picture: LevelPicture): void {
  inPlan(sheet, () => {
    for (const { value, polygons } of picture.contours) {
      const band = BAND_EDGES.indexOf(value);
      if (band < 0) continue;
      sheet.context.beginPath();
      for (const rings of polygons) for (const ring of rings) layRing(sheet.context, ring);
      sheet.context.fillStyle = tint(sheet.ink, band);
      sheet.context.fill('evenodd');
    }
  });
}

function paintContours(sheet: Sheet, contours: readonly DrawnContour[]): void {
  const { context, ink } = sheet;
  inPlan(sheet, (pixel) => {
    for (const { value, kind, lines } of contours) {
      layLines(context, lines);
      context.globalAlpha = kind === 'between' ? 0.5 : 1;
      context.strokeStyle = contourInk(ink, value);
      context.lineWidth = CONTOUR_WIDTHS[kind] * pixel;
      context.stroke();
    }
  });
}

export function layLines(context: CanvasRenderingContext2D, lines: readonly ContourLine[]): void {
  context.beginPath();
  for (const { points, closed } of lines) {
    points.forEach(([x, y], i) => (i === 0 ? context.moveTo(x, y) : context.lineTo(x, y)));
    if (closed) context.closePath();
  }
}

function paintTarget(sheet: Sheet, lines: readonly ContourLine[]): void {
  const { context, ink } = sheet;
  if (lines.length === 0) return;
  inPlan(sheet, (pixel) => {
    layLines(context, lines);
    strokePath(
      sheet,
      { colour: ink.text, width: TARGET * pixel, dash: CHAIN.map((length) => length * pixel) },
      TARGET_CASING * pixel,
    );
  });
}

/** Hatch where nothing is known. */
function paintUnsupported(sheet: Sheet, rings: readonly Ring[]): void {
  const { context, ink } = sheet;
  if (rings.length === 0) return;
  context.save();
  clipTo(sheet, rings);
  const box = bounds(rings.flat().map((p) => onSheet(sheet, p)));
  const seen = {
    x0: Math.max(0, box.x0),
    y0: Math.max(0, box.y0),
    x1: Math.min(sheet.camera.width, box.x1),
    y1: Math.min(sheet.camera.height, box.y1),
  };
  if (seen.x1 > seen.x0 && seen.y1 > seen.y0) {
    context.fillStyle = paper(ink);
    context.fillRect(seen.x0, seen.y0, seen.x1 - seen.x0, seen.y1 - seen.y0);
    context.beginPath();
    for (const [a, b] of hatchLines(seen, onSheet(sheet, [0, 0]))) {
      context.moveTo(...a);
      context.lineTo(...b);
    }
    strokePath(sheet, { colour: ink.hatch, width: HATCH.line });
  }
  context.restore();
  context.beginPath();
  layOnSheet(sheet, rings);
  strokePath(sheet, { colour: ink.hatch, width: HATCH.edge });
}
