import { paper } from './ink';
import { write, type Hand } from './lettering';
import { strokePath, type Screen, type Sheet } from './sheet';

const HAND: Hand = { size: 12, weight: 600 };
const CASING = 1.6;
/** Of the triangle, its middle at the place: half a side, and what is above and below. */
const [HALF, ABOVE, BELOW] = [11.5, 13, 7];

/** A place to read: a triangle with its rank from 0; the chosen one heavier, in a second casing. Stale: without accent, dashed. */
export function paintTriangle(
  sheet: Sheet,
  [x, y]: Screen,
  rank: number,
  { isPicked = false, stale }: { isPicked?: boolean; stale: boolean },
): void {
  const { context, ink } = sheet;
  const colour = stale ? ink.text2 : ink.accent;
  const lay = (grown: number) => {
    context.beginPath();
    context.moveTo(x, y - ABOVE - 2 * grown);
    context.lineTo(x + HALF + 1.7 * grown, y + BELOW + grown);
    context.lineTo(x - HALF - 1.7 * grown, y + BELOW + grown);
    context.closePath();
  };
  if (isPicked) {
    lay(4);
    strokePath(sheet, { colour, width: 1.4 }, CASING);
  }
  lay(0);
  context.fillStyle = paper(ink);
  context.fill();
  strokePath(sheet, { colour, width: isPicked ? 2.6 : 1.7, dash: stale ? [4, 3] : undefined }, CASING);
  write(sheet, { text: String(rank + 1), x, y: y + 1.5, hand: HAND, fill: colour });
}
