import type { SourceChange } from '../../engine/whatIf/sourceChange';
import type { Source } from '../../home/home';
import { paper } from './ink';
import { paintSource } from './paintSource';
import type { Scene } from './scene';
import { onSheet, strokePath, type Screen, type Sheet } from './sheet';

const STRIKE = 9;

/** Sources that are tried off, weaker or elsewhere, in accent where they would be; off: struck out. A dotted way leads to a new place. */
export function paintTried(sheet: Sheet, { home, view, tried }: Scene): void {
  if (view.stage !== 'arrange') return;
  for (const change of tried) {
    const source = home.sources[change.id];
    if (source && source.level === view.level) paintOne(sheet, source, change);
  }
}

function paintOne(sheet: Sheet, source: Source, { scale, path }: SourceChange): void {
  const { ink } = sheet;
  const then = path ? { ...source, path: path.map(([x, y]): [number, number] => [x, y]) } : source;
  const from = onSheet(sheet, source.path[0]!);
  if (path) paintWay(sheet, from, onSheet(sheet, then.path[0]!));
  paintSource({ ...sheet, ink: { ...ink, wall: ink.accent } }, then);
  if (scale === 0) paintStrike(sheet, middleOf(sheet, then));
}

/** From an open ring where the source is, dotted. */
function paintWay(sheet: Sheet, start: Screen, end: Screen): void {
  const { context, ink } = sheet;
  context.beginPath();
  context.moveTo(...start);
  context.lineTo(...end);
  strokePath(sheet, { colour: ink.accent, width: 2, dash: [2, 3] }, 1.4);
  context.beginPath();
  context.arc(...start, 3.2, 0, 2 * Math.PI);
  context.fillStyle = paper(ink);
  context.fill();
  strokePath(sheet, { colour: ink.accent, width: 1.5 });
}

function paintStrike(sheet: Sheet, [x, y]: Screen): void {
  const { context, ink } = sheet;
  context.beginPath();
  context.moveTo(x - STRIKE, y + STRIKE);
  context.lineTo(x + STRIKE, y - STRIKE);
  strokePath(sheet, { colour: ink.accent, width: 2 }, 1.6);
}

/** Of a line that part of it which is seen. */
function middleOf(sheet: Sheet, { path }: Source): Screen {
  const { width, height } = sheet.camera;
  const inSight = ([x, y]: Screen) => x >= 0 && x <= width && y >= 0 && y <= height;
  const steps = path.slice(1).flatMap((b, i) => {
    const [from, to] = [onSheet(sheet, path[i]!), onSheet(sheet, b)];
    return Array.from({ length: 101 }, (_, k): Screen => {
      const t = k / 100;
      return [from[0] + t * (to[0] - from[0]), from[1] + t * (to[1] - from[1])];
    });
  });
  const seen = steps.filter(inSight);
  return seen[Math.floor(seen.length / 2)] ?? onSheet(sheet, path[0]!);
}
