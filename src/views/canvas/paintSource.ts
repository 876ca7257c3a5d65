import type { Source } from '../../home/home';
import { clippedSegment, tickedLine } from './drawing/sourceLines';
import { paper } from './ink';
import { onSheet, strokePath, type Screen, type Sheet } from './sheet';

const CASING = 1.8;

export function paintSource(sheet: Sheet, source: Source): void {
  if (source.kind === 'line') paintLineSource(sheet, source);
  else if (source.path[0]) paintLozenge(sheet, onSheet(sheet, source.path[0]));
}

function paintLineSource(sheet: Sheet, source: Source): void {
  const { context, camera, ink } = sheet;
  const box = { x0: -20, y0: -20, x1: camera.width + 20, y1: camera.height + 20 };
  const path = source.path.map((p) => onSheet(sheet, p));
  for (let i = 1; i < path.length; i++) {
    const seen = clippedSegment(path[i - 1]!, path[i]!, box);
    if (!seen) continue;
    const { dashes, ticks } = tickedLine(seen);
    context.beginPath();
    for (const [a, b] of [...dashes, ...ticks]) {
      context.moveTo(...a);
      context.lineTo(...b);
    }
    strokePath(sheet, { colour: ink.wall, width: 1.3 }, CASING);
  }
}

function paintLozenge(sheet: Sheet, [x, y]: Screen): void {
  const { context, ink } = sheet;
  const lay = (w: number, h: number) => {
    context.beginPath();
    context.moveTo(x, y - h);
    context.lineTo(x + w, y);
    context.lineTo(x, y + h);
    context.lineTo(x - w, y);
    context.closePath();
  };
  lay(6, 9.5);
  context.fillStyle = paper(ink);
  context.fill();
  strokePath(sheet, { colour: ink.wall, width: 1.4 }, CASING);
  lay(6, 9.5);
  context.fill();
  strokePath(sheet, { colour: ink.wall, width: 1.4 });
  lay(2.6, 4.6);
  context.fillStyle = ink.wall;
  context.fill();
}
