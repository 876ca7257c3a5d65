import { bounds } from '../../engine/geometry/polygon';
import { rectangle } from '../../engine/geometry/pose';
import { brokenLines } from '../../words/brokenRules';
import { doseWithUnit, intervalText } from '../../words/numbers';
import type { Box } from './drawing/labelPlaces';
import { paintNote, type Run } from './paintNote';
import type { Scene } from './scene';
import { onSheet, type Sheet } from './sheet';

/** Letters of a line of the note: a phone has room for fewer. */
const LETTERS = { phone: 38, other: 46 } as const;

/** Beside the piece in the hand: its dose where it is, and which rule it breaks there. */
export function paintHandNote(sheet: Sheet, scene: Pick<Scene, 'home' | 'view' | 'form' | 'atHand'>): void {
  const { home, view, form, atHand } = scene;
  const known = atHand && home.pieces[atHand.id];
  if (!atHand?.told || !known || atHand.put.level !== view.level) return;
  const { level, at, angle } = atHand.put;
  const piece = { ...known, level, at, angle };
  const unit = home.settings.fieldUnit;
  const { dose, broken } = atHand;
  const lines: Run[][] = [];
  if (dose)
    lines.push([
      { text: doseWithUnit(dose.dose, unit), weight: 600 },
      { text: ` (${intervalText(dose.low, dose.high, unit)})`, weight: 400 },
    ]);
  const letters = form === 'phone' ? LETTERS.phone : LETTERS.other;
  for (const text of brokenLines(home, piece, broken, letters)) lines.push([{ text, weight: 400 }]);
  if (lines.length === 0) return;
  const { x0, x1, y0, y1 } = bounds(rectangle(piece, piece.size).map((p) => onSheet(sheet, p)));
  const box: Box = { x: x0, y: y0, width: x1 - x0, height: y1 - y0 };
  paintNote(sheet, [(x0 + x1) / 2, (y0 + y1) / 2], lines, box);
}
