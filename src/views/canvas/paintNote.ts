import { FRAME } from './paintFrame';
import { widthOf, write, type Hand } from './lettering';
import { strokePath, type Screen, type Sheet } from './sheet';

/** A run of lettering within a line of a note. */
export interface Run {
  text: string;
  weight: number;
}

const PAD = 10;
const OFFSET = 14;
const SIZES = [15, 13] as const;
const LEADINGS = [20, 18] as const;

/** A note at a place: a ruled slip on the side where it is not cut by the frame. The first line is the larger. */
export function paintNote(sheet: Sheet, [x, y]: Screen, lines: readonly (readonly Run[])[]): void {
  const { context, camera, ink } = sheet;
  const handOf = (line: number, run: Run): Hand => ({ size: SIZES[line === 0 ? 0 : 1], weight: run.weight });
  const widths = lines.map((runs, i) => runs.map((run) => widthOf(context, run.text, handOf(i, run))));
  const width = Math.max(...widths.map((line) => line.reduce((sum, w) => sum + w, 0))) + 2 * PAD;
  const height = LEADINGS[0] + (lines.length - 1) * LEADINGS[1] + 8;
  const left = x + OFFSET + width > camera.width - FRAME ? x - OFFSET - width : x + OFFSET;
  const top = y + OFFSET + height > camera.height - FRAME ? y - OFFSET - height : y + OFFSET;
  const at: Screen = [Math.max(FRAME, Math.round(left)) + 0.5, Math.max(FRAME, Math.round(top)) + 0.5];
  context.beginPath();
  context.rect(...at, Math.ceil(width), height);
  context.fillStyle = ink.lift;
  context.fill();
  strokePath(sheet, { colour: ink.text, width: 1 });
  let base = at[1] + 4 + LEADINGS[0] / 2;
  lines.forEach((runs, i) => {
    let start = at[0] + PAD;
    runs.forEach((run, k) => {
      write(sheet, {
        text: run.text,
        x: start,
        y: base,
        align: 'left',
        hand: handOf(i, run),
        fill: i === 0 ? ink.text : ink.text2,
      });
      start += widths[i]![k]!;
    });
    base += LEADINGS[1];
  });
}
