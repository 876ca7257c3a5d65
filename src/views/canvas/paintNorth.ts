import { canvasWords } from '../../words/canvas';
import type { Box } from './drawing/labelPlaces';
import { paper } from './ink';
import { FRAME } from './paintFrame';
import { write } from './lettering';
import { strokePath, type Sheet } from './sheet';

const LENGTH = 26;

/** What the needle and its letter take of the sheet. */
export const northBox = ({ width }: { width: number }): Box => ({
  x: width - FRAME - 40,
  y: FRAME,
  width: 28,
  height: 50,
});

/** The half-filled needle under its N, upper right of the frame; `north` is the angle from the top of the sheet. */
export function paintNorth(sheet: Sheet, north: number): void {
  const { context, camera, ink } = sheet;
  const x = camera.width - FRAME - 26;
  const y = FRAME + 35;
  write(sheet, {
    text: canvasWords.north,
    x,
    y: FRAME + 14,
    hand: { size: 12, weight: 650 },
    fill: ink.text,
  });
  context.save();
  context.translate(x, y);
  context.rotate((-north * Math.PI) / 180);
  const outline = () => {
    context.beginPath();
    context.moveTo(0, -LENGTH / 2);
    context.lineTo(4, LENGTH / 2);
    context.lineTo(0, LENGTH / 2 - 4);
    context.lineTo(-4, LENGTH / 2);
    context.closePath();
  };
  const half = (side: number) => {
    context.beginPath();
    context.moveTo(0, -LENGTH / 2);
    context.lineTo(side * 4, LENGTH / 2);
    context.lineTo(0, LENGTH / 2 - 4);
    context.closePath();
  };
  outline();
  strokePath(sheet, { colour: paper(ink), width: 4 });
  half(1);
  context.fillStyle = ink.text;
  context.fill();
  half(-1);
  strokePath(sheet, { colour: ink.text, width: 0.8 });
  context.restore();
}
