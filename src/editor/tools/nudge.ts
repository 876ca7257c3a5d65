import type { Point } from '../../home/home';
import { moveBy } from '../../home/edits/moveBy';
import { rotate } from '../../home/edits/rotate';
import type { KeyInput } from '../editor';
import type { Bench } from './tool';

/** Metres a press of an arrow key moves what is selected; ten times that with shift. */
const STEP = 0.05;

export const WAYS: Record<string, Point> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, 1],
  ArrowDown: [0, -1],
};

/**
 * Moves and turns by keys: arrows, and R for a quarter turn (with shift the other way). Pieces of an answer that is looked at
 * are moved in it, the home is not.
 */
export function nudge(bench: Bench, input: KeyInput): boolean {
  if (input.command) return false;
  const subject = [bench.answer, bench.tried].find(({ has }) => bench.selection.every(has)) ?? bench;
  if (input.key.toLowerCase() === 'r') {
    subject.run(rotate(bench.selection, input.shift ? -90 : 90));
    return true;
  }
  const way = WAYS[input.key];
  if (!way) return false;
  const step = input.shift ? 10 * STEP : STEP;
  subject.run(moveBy(bench.selection, [way[0] * step, way[1] * step]));
  return true;
}
