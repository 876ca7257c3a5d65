import { frameMarks } from './drawing/frameMarks';
import { paper } from './ink';
import { strokePath, type Sheet } from './sheet';
import { toPlan } from '../../editor/camera';

export const FRAME = 8;
const MARK = 4;

/**
 * The metre frame round the sheet: a double line filled black-and-clear in true metres. While the map is worked out its
 * marks fill in accent, `progress` 0…1; null: nothing is running.
 */
export function paintFrame(sheet: Sheet, progress: number | null): void {
  const { context, camera, ink } = sheet;
  const { width, height, scale } = camera;
  context.fillStyle = paper(ink);
  context.fillRect(0, 0, width, FRAME);
  context.fillRect(0, height - FRAME, width, FRAME);
  context.fillRect(0, FRAME, FRAME, height - 2 * FRAME);
  context.fillRect(width - FRAME, FRAME, FRAME, height - 2 * FRAME);
  const [left, top] = toPlan(camera, 0, 0);
  const inset = (FRAME - MARK) / 2;
  for (const { from, to } of frameMarks(width, left, scale)) {
    const [start, end] = [Math.max(FRAME, from), Math.min(width - FRAME, to)];
    if (end <= start) continue;
    context.fillStyle = isDone(start / width, progress) ? ink.accent : ink.text;
    context.fillRect(start, inset, end - start, MARK);
    context.fillRect(start, height - FRAME + inset, end - start, MARK);
  }
  for (const { from, to } of frameMarks(height, top, scale, -1)) {
    const [start, end] = [Math.max(FRAME, from), Math.min(height - FRAME, to)];
    if (end <= start) continue;
    context.fillStyle = isDone(1 - end / height, progress) ? ink.accent : ink.text;
    context.fillRect(inset, start, MARK, end - start);
    context.fillRect(width - FRAME + inset, start, MARK, end - start);
  }
  context.beginPath();
  context.rect(0.5, 0.5, width - 1, height - 1);
  context.rect(FRAME - 0.5, FRAME - 0.5, width - 2 * FRAME + 1, height - 2 * FRAME + 1);
  strokePath(sheet, { colour: ink.text, width: 1 });
}

const isDone = (share: number, progress: number | null): boolean => progress !== null && share < progress;
