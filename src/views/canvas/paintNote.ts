import type { Camera } from '../../editor/editor';
import type { Box } from './drawing/labelPlaces';
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

/**
 * A note at a place: a ruled slip on the side where it is not cut by the frame, and beside what it must not cover. The first
 * line is the larger.
 */
export function paintNote(
  sheet: Sheet,
  [x, y]: Screen,
  lines: readonly (readonly Run[])[],
  clear?: Box,
): void {
  const { context, camera, ink } = sheet;
  const handOf = (line: number, run: Run): Hand => ({ size: SIZES[line === 0 ? 0 : 1], weight: run.weight });
  const widths = lines.map((runs, i) => runs.map((run) => widthOf(context, run.text, handOf(i, run))));
  const width = Math.max(...widths.map((line) => line.reduce((sum, w) => sum + w, 0))) + 2 * PAD;
  const height = LEADINGS[0] + (lines.length - 1) * LEADINGS[1] + 8;
  const [left, top] = clear
    ? beside(clear, width, height, camera)
    : [
        x + OFFSET + width > camera.width - FRAME ? x - OFFSET - width : x + OFFSET,
        y + OFFSET + height > camera.height - FRAME ? y - OFFSET - height : y + OFFSET,
      ];
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

/** The upper left corner of a note right of a box, left of it, under or over it: the first that the frame does not cut. */
function beside(box: Box, width: number, height: number, camera: Camera): Screen {
  const [right, bottom] = [camera.width - FRAME - width, camera.height - FRAME - height];
  const within = (value: number, most: number) => Math.max(FRAME, Math.min(most, value));
  const [x, y] = [within(box.x + box.width / 2 - width / 2, right), within(box.y + OFFSET, bottom)];
  const places: Screen[] = [
    [box.x + box.width + OFFSET, y],
    [box.x - OFFSET - width, y],
    [x, box.y + box.height + OFFSET],
    [x, box.y - OFFSET - height],
  ];
  const fits = ([left, top]: Screen) => left >= FRAME && left <= right && top >= FRAME && top <= bottom;
  return places.find(fits) ?? [x, within(box.y + box.height + OFFSET, bottom)];
}
