import type { Probe } from '../../editor/editor';
import type { FieldUnit, LengthUnit, Point } from '../../home/home';
import { canvasWords, nearestText } from '../../words/canvas';
import { intervalText, withUnit } from '../../words/numbers';
import { paper } from './ink';
import { paintNote, type Run } from './paintNote';
import { onSheet, strokePath, type Screen, type Sheet } from './sheet';

type Arm = readonly [number, number];
const UPRIGHT: readonly Arm[] = [
  [0, 1],
  [0, -1],
];
const ALL: readonly Arm[] = [[1, 0], [-1, 0], ...UPRIGHT];

interface Cross {
  inner: number;
  outer: number;
  dot: boolean;
  arms: readonly Arm[];
}

/** Arms round a place, cased; a dot where it is aimed at. Over a value only the upright ones, which do not strike it through. */
function paintCross(sheet: Sheet, [x, y]: Screen, { inner, outer, dot, arms }: Cross): void {
  const { context, ink } = sheet;
  context.beginPath();
  for (const [dx, dy] of arms) {
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
export const paintAim = (sheet: Sheet, { at, over }: { at: Point; over: boolean }): void =>
  paintCross(sheet, onSheet(sheet, at), { inner: 10, outer: 26, dot: true, arms: over ? UPRIGHT : ALL });

/** The estimate at the pointer, or why there is none. */
export function paintProbe(sheet: Sheet, probe: Probe, unit: FieldUnit, length: LengthUnit): void {
  if (probe.reason === 'outside') return;
  const place = onSheet(sheet, probe.at);
  paintCross(sheet, place, { inner: 4, outer: 16, dot: false, arms: ALL });
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
