import type { Ring } from '../../engine/geometry/point';
import type { PlanGeometry } from './planGeometry';
import { paper } from './ink';
import { inPlan, onSheet, paintLines, trace, type Sheet } from './sheet';

const WALL_CASING = 1.5;
// Walls stay visible when the whole street is on the sheet.
const LEAST_WALL = 1.6;
const THINNEST = 0.09;

/** Walls, openings, fixtures and the edge of the grounds. */
export function paintPlan(sheet: Sheet, plan: PlanGeometry): void {
  paintGrounds(sheet, plan.grounds);
  paintLines(sheet, plan.fixtures, sheet.ink.wall, 0);
  paintWalls(sheet, plan.walls);
  paintLines(sheet, plan.openings, sheet.ink.wall, 1);
}

function paintGrounds(sheet: Sheet, grounds: readonly Ring[]): void {
  const { context, ink } = sheet;
  context.strokeStyle = ink.text2;
  context.lineWidth = 1;
  context.setLineDash([1, 2.5]);
  for (const ring of grounds) {
    trace(
      context,
      ring.map((p) => onSheet(sheet, p)),
      true,
    );
    context.stroke();
  }
  context.setLineDash([]);
}

function paintWalls(sheet: Sheet, walls: readonly Ring[]): void {
  const { context, ink, camera } = sheet;
  inPlan(sheet, (pixel) => {
    context.beginPath();
    for (const ring of walls) layRing(context, ring);
    context.strokeStyle = paper(ink);
    context.lineWidth = 2 * WALL_CASING * pixel;
    context.stroke();
    context.fillStyle = ink.wall;
    context.fill('evenodd');
    const missing = LEAST_WALL - THINNEST * camera.scale;
    if (missing > 0) {
      context.strokeStyle = ink.wall;
      context.lineWidth = missing * pixel;
      context.stroke();
    }
  });
}

export function layRing(
  context: Pick<CanvasRenderingContext2D, 'moveTo' | 'lineTo' | 'closePath'>,
  ring: Ring,
): void {
  ring.forEach(([x, y], i) => (i === 0 ? context.moveTo(x, y) : context.lineTo(x, y)));
  context.closePath();
}
