import type { Probe } from '../../editor/editor';
import type { FieldUnit, LengthUnit, Point } from '../../home/home';
import { canvasWords, nearestText } from '../../words/canvas';
import { intervalText, withUnit } from '../../words/numbers';
import { paper } from './ink';
import { paintNote, type Run } from './paintNote';
import { onSheet, strokePath, type Screen, type Sheet } from './sheet';

/** Four arms round a place, cased; a dot where it is aimed at. */
function paintCross(sheet: Sheet, [x, y]: Screen, inner: number, outer: number, dot: boolean): void {
  const { context, ink } = sheet;
  context.beginPath();
  for (const [dx, dy] of [
    [1, 0],
    [-1, 0],
    [0, 1],
    [0, -1],
  ] as const) {
    context.moveTo(x + dx * inner, y + dy * inner);
    context.lineTo(x + dx * outer, y + dy * outer);
  }
  strokePath(sheet, { colour: ink.accent, width: 2 }, 1.6);
  if (!dot) return;
  context.beginPath();
  context.arc(x, y, 3 + 1.6, 0, 2 * Math.PI);
  context.fillStyle = paper(ink);
  context.fill();
  context.beginPath();
  context.arc(x, y, 3, 0, 2 * Math.PI);
  context.fillStyle = ink.accent;
  context.fill();
}

/** Where the next reading stands. */
export const paintAim = (sheet: Sheet, at: Point): void =>
  paintCross(sheet, onSheet(sheet, at), 10, 26, true);

/** The estimate at the pointer, or why there is none. */
export function paintProbe(sheet: Sheet, probe: Probe, unit: FieldUnit, length: LengthUnit): void {
  if (probe.reason === 'outside') return;
  const place = onSheet(sheet, probe.at);
  paintCross(sheet, place, 4, 16, false);
  const lines: Run[][] = [valueLine(probe, unit)];
  if (probe.nearest !== null) lines.push([{ text: nearestText(probe.nearest, length), weight: 400 }]);
  paintNote(sheet, place, lines);
}

function valueLine({ value, low, high, supported }: Probe, unit: FieldUnit): Run[] {
  if (value === null || !supported) return [{ text: canvasWords.noEstimate, weight: 600 }];
  const line: Run[] = [{ text: withUnit(value, unit), weight: 600 }];
  if (low !== null && high !== null) line.push({ text: ` (${intervalText(low, high, unit)})`, weight: 400 });
  return line;
}
