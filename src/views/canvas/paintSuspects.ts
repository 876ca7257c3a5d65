import type { Point } from '../../home/home';
import type { UnmarkedSource } from '../../engine/mapping/sourceSampling/unmarkedSources';
import { clippedSegment } from './drawing/sourceLines';
import { paper } from './ink';
import { onSheet, strokePath, trace, type Screen, type Sheet } from './sheet';

const CASING = 1.4;
const DASH = [5, 4];
/** Clear of a wall's own line. */
const ASIDE = 6;
const RING = 13;
const ACCENT = 2.6;

/**
 * Where an unmarked source is likely, as quiet as a thing not yet there: an empty lozenge, on a wall between two broken
 * lines, in a broken ring for a place. Marked ones are full and lie on one line.
 */
export function paintSuspects(sheet: Sheet, suspects: readonly UnmarkedSource[]): void {
  for (const { path } of suspects) {
    layRound(sheet, path);
    strokePath(sheet, { colour: sheet.ink.wall, width: 1.2, dash: DASH }, CASING);
    const middle = middleOf(sheet, path);
    if (!middle) continue;
    layLozenge(sheet, middle);
    sheet.context.fillStyle = paper(sheet.ink);
    sheet.context.fill();
    strokePath(sheet, { colour: sheet.ink.wall, width: 1.3 });
  }
}

/** The one that is looked at. */
export function paintChosenSuspect(sheet: Sheet, { path }: UnmarkedSource): void {
  layRound(sheet, path);
  strokePath(sheet, { colour: sheet.ink.accent, width: ACCENT }, CASING);
}

/** Where its lozenge stands; null off the sheet. */
export function middleOf(sheet: Sheet, path: readonly Point[]): Screen | null {
  if (path.length === 1) return onSheet(sheet, path[0]!);
  const seen = seenPart(sheet, path);
  return seen && [(seen[0][0] + seen[1][0]) / 2, (seen[0][1] + seen[1][1]) / 2];
}

function layRound(sheet: Sheet, path: readonly Point[]): void {
  const { context } = sheet;
  context.beginPath();
  if (path.length === 1) {
    context.arc(...onSheet(sheet, path[0]!), RING, 0, 2 * Math.PI);
    return;
  }
  const seen = seenPart(sheet, path);
  if (!seen) return;
  const [[ax, ay], [bx, by]] = seen;
  const length = Math.max(1, Math.hypot(bx - ax, by - ay));
  const [u, v] = [(-ASIDE * (by - ay)) / length, (ASIDE * (bx - ax)) / length];
  for (const side of [1, -1]) {
    context.moveTo(ax + side * u, ay + side * v);
    context.lineTo(bx + side * u, by + side * v);
  }
}

function seenPart(sheet: Sheet, [a, b]: readonly Point[]): [Screen, Screen] | null {
  const box = { x0: 0, y0: 0, x1: sheet.camera.width, y1: sheet.camera.height };
  return clippedSegment(onSheet(sheet, a!), onSheet(sheet, b!), box);
}

function layLozenge({ context }: Sheet, [x, y]: Screen): void {
  trace(
    context,
    [
      [x, y - 8],
      [x + 5, y],
      [x, y + 8],
      [x - 5, y],
    ],
    true,
  );
}
