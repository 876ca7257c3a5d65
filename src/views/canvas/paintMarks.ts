import type { Mark } from '../../editor/editor';
import type { Point } from '../../home/home';
import { paper } from './ink';
import { widthOf, write, type Hand } from './lettering';
import { paintAim } from './paintProbe';
import { paintNote } from './paintNote';
import { onSheet, strokePath, trace, type Sheet } from './sheet';

type MarkName = Mark['mark'];
type Painter<Name extends MarkName> = (sheet: Sheet, mark: Extract<Mark, { mark: Name }>) => void;

const ACCENT = 2;
const CASING = 1.3;
/** Wide enough to be seen upon a wall. */
const WALL = 5;
const RING = 11;
const LENGTH_HAND: Hand = { size: 14, weight: 500 };

const PAINTERS: { [Name in MarkName]: Painter<Name> } = {
  ring: (sheet, { points, state }) => {
    lay(sheet, points, true);
    sheet.context.globalAlpha = 0.6;
    sheet.context.fillStyle = sheet.ink.lift;
    sheet.context.fill();
    sheet.context.globalAlpha = 1;
    const colour = state === 'broken' ? sheet.ink.text2 : sheet.ink.accent;
    strokePath(sheet, { colour, width: ACCENT, dash: state === 'broken' ? [2, 3] : [7, 4] }, CASING);
  },
  path: (sheet, { points, closed }) => {
    lay(sheet, points, closed);
    strokePath(sheet, { colour: sheet.ink.accent, width: ACCENT, dash: [7, 4] }, CASING);
  },
  corner: (sheet, { at, snapped }) => {
    circle(sheet, at, 6);
    sheet.context.fillStyle = snapped ? sheet.ink.accent : paper(sheet.ink);
    sheet.context.fill();
    strokePath(sheet, { colour: sheet.ink.accent, width: ACCENT });
  },
  guide: (sheet, { from, to }) => {
    lay(sheet, [from, to]);
    strokePath(sheet, { colour: sheet.ink.accent, width: 0.8, dash: [2, 3] });
  },
  length: (sheet, { from, to, text }) => paintLength(sheet, from, to, text),
  handle: (sheet, { at, role }) => paintHandle(sheet, at, role),
  lasso: (sheet, { from, to }) => {
    lay(sheet, [from, [to[0], from[1]], to, [from[0], to[1]]], true);
    strokePath(sheet, { colour: sheet.ink.accent, width: 1.2, dash: [4, 3] }, CASING);
  },
  pointed: (sheet, { points }) => {
    const [only, ...others] = points;
    if (only && others.length === 0) circle(sheet, only, RING);
    else lay(sheet, points);
    strokePath(sheet, { colour: sheet.ink.accent, width: others.length === 0 ? ACCENT : WALL }, CASING);
  },
  aim: paintAim,
  note: (sheet, { at, lines }) => {
    const [first, ...rest] = lines;
    if (first !== undefined)
      paintNote(sheet, onSheet(sheet, at), [
        [{ text: first, weight: 600 }],
        ...rest.map((text) => [{ text, weight: 400 }]),
      ]);
  },
};

/** What a tool shows while it works. */
export function paintMarks(sheet: Sheet, marks: readonly Mark[]): void {
  for (const mark of marks) (PAINTERS[mark.mark] as Painter<MarkName>)(sheet, mark);
}

function lay(sheet: Sheet, points: readonly Point[], closed = false): void {
  trace(
    sheet.context,
    points.map((p) => onSheet(sheet, p)),
    closed,
  );
}

function circle(sheet: Sheet, at: Point, radius: number): void {
  sheet.context.beginPath();
  sheet.context.arc(...onSheet(sheet, at), radius, 0, 2 * Math.PI);
}

/** A measured length: a hairline with ticks at its ends, the number in its middle. */
export function paintLength(sheet: Sheet, from: Point, to: Point, text: string): void {
  const { context, ink } = sheet;
  const [a, b] = [onSheet(sheet, from), onSheet(sheet, to)];
  const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
  if (length < 1) return;
  const [nx, ny] = [(-(b[1] - a[1]) / length) * 5, ((b[0] - a[0]) / length) * 5];
  context.beginPath();
  context.moveTo(...a);
  context.lineTo(...b);
  for (const [x, y] of [a, b]) {
    context.moveTo(x - nx, y - ny);
    context.lineTo(x + nx, y + ny);
  }
  strokePath(sheet, { colour: ink.text2, width: 1 }, 1);
  const [x, y] = [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
  const width = widthOf(context, text, LENGTH_HAND) + 10;
  context.fillStyle = paper(ink);
  context.fillRect(x - width / 2, y - 9, width, 18);
  write(sheet, { text, x, y, hand: LENGTH_HAND, fill: ink.text });
}

type HandleRole = Extract<Mark, { mark: 'handle' }>['role'];
const HANDLES: Record<HandleRole, { radius: number; square: boolean; filled: boolean }> = {
  corner: { radius: 4.5, square: true, filled: false },
  end: { radius: 4.5, square: true, filled: false },
  middle: { radius: 3.5, square: false, filled: false },
  turn: { radius: 5, square: false, filled: true },
};

function paintHandle(sheet: Sheet, at: Point, role: HandleRole): void {
  const { context, ink } = sheet;
  const { radius, square, filled } = HANDLES[role];
  const [x, y] = onSheet(sheet, at);
  context.beginPath();
  if (square) context.rect(x - radius, y - radius, 2 * radius, 2 * radius);
  else context.arc(x, y, radius, 0, 2 * Math.PI);
  context.fillStyle = filled ? ink.accent : paper(ink);
  strokePath(sheet, { colour: ink.accent, width: 1.6 }, CASING);
  context.fill();
  strokePath(sheet, { colour: ink.accent, width: 1.6 });
}
