import type { Reading } from '../../home/home';
import { paper } from './ink';
import { onSheet, strokePath, type Sheet } from './sheet';

const DOT = 2.7;
const CASING = 1.6;

/** The sign of a reading: a dot; open with the supply off; a T below the range; struck where it is left out. */
export function paintReading(sheet: Sheet, reading: Reading, isSupplyOff: boolean, radius = DOT): void {
  const { context, ink } = sheet;
  const [x, y] = onSheet(sheet, reading.at);
  if (reading.limit === 'below' && !reading.excluded) {
    context.beginPath();
    context.moveTo(x - 5, y - 2);
    context.lineTo(x + 5, y - 2);
    context.moveTo(x, y - 2);
    context.lineTo(x, y + 5);
    strokePath(sheet, { colour: ink.wall, width: 1.6 }, CASING);
    return;
  }
  const isOpen = isSupplyOff || reading.excluded !== '';
  const colour = reading.excluded ? ink.text3 : ink.wall;
  context.beginPath();
  context.arc(x, y, radius + CASING, 0, 2 * Math.PI);
  context.fillStyle = paper(ink);
  context.fill();
  context.beginPath();
  context.arc(x, y, isOpen ? radius + 0.3 : radius, 0, 2 * Math.PI);
  if (isOpen) strokePath(sheet, { colour, width: 1.4 });
  else {
    context.fillStyle = colour;
    context.fill();
  }
  if (!reading.excluded) return;
  context.beginPath();
  context.moveTo(x - 5.5, y + 5.5);
  context.lineTo(x + 5.5, y - 5.5);
  strokePath(sheet, { colour, width: 1.3 });
}
