import { grown } from '../../engine/geometry/outline';
import { signedArea } from '../../engine/geometry/polygon';
import type { Ring } from '../../engine/geometry/point';
import type { Ref } from '../../home/home';
import type { Kind } from '../../home/kinds/kind';
import { KINDS } from '../../home/kinds/kinds';
import { ghostsOf, type Scene } from './scene';
import { onSheet, strokePath, trace, type Sheet } from './sheet';

const HOVER = 1.2;
const SELECTED = 2.6;
const CASING = 1.6;
// A room's line runs inside its walls.
const INSET = 5;

export function paintHover(sheet: Sheet, scene: Scene): void {
  const { hover, selection } = scene;
  if (!hover || selection.some(({ kind, id }) => kind === hover.kind && id === hover.id)) return;
  paintOutline(sheet, scene, hover, HOVER);
}

export function paintSelection(sheet: Sheet, scene: Scene): void {
  for (const ref of scene.selection) paintOutline(sheet, scene, ref, SELECTED);
}

/** Accent with a casing on both sides, along the thing's own shape; a piece that would be moved is where its ghost is. */
function paintOutline(sheet: Sheet, scene: Scene, ref: Ref, width: number): void {
  const { home, view } = scene;
  const kind = KINDS[ref.kind] as Kind;
  const ghosts = ref.kind === 'piece' ? ghostsOf(scene) : [];
  const ghost = ghosts.find(({ ghost: { id, level } }) => id === ref.id && level === view.level);
  const thing = ghost?.ghost ?? home[kind.collection][ref.id];
  if (!thing || kind.level(home, thing) !== view.level) return;
  const { points, closed } = kind.shape(home, thing);
  const stroke = { colour: sheet.ink.accent, width };
  if (points.length === 1) {
    sheet.context.beginPath();
    sheet.context.arc(...onSheet(sheet, points[0]!), 9, 0, 2 * Math.PI);
    strokePath(sheet, stroke, CASING);
    return;
  }
  const rings = ref.kind === 'room' ? inset(points, INSET / sheet.camera.scale) : [points];
  for (const ring of rings) {
    trace(
      sheet.context,
      ring.map((p) => onSheet(sheet, p)),
      closed,
    );
    strokePath(sheet, stroke, CASING);
  }
}

function inset(ring: Ring, by: number): Ring[] {
  return grown([signedArea(ring) < 0 ? ring.toReversed() : ring], -by);
}
