import type { Point } from '../../home/home';
import { moveBy } from '../../home/edits/moveBy';
import { rotate } from '../../home/edits/rotate';
import type { KeyInput } from '../editor';
import { MOVES } from '../stages';
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
 * are moved in it, the home is not; where the plan is only looked at nothing moves.
 */
export function nudge(bench: Bench, input: KeyInput): boolean {
  if (input.command) return false;
  const { selection, view } = bench;
  const subject = [bench.answer, bench.tried].find(({ has }) => selection.every(has)) ?? bench;
  const moving =
    subject === bench ? selection.filter(({ kind }) => MOVES[view.stage].includes(kind)) : selection;
  if (moving.length === 0) return false;
  if (input.key.toLowerCase() === 'r') {
    subject.run(rotate(moving, input.shift ? -90 : 90));
    return true;
  }
  const way = WAYS[input.key];
  if (!way) return false;
  const step = input.shift ? 10 * STEP : STEP;
  subject.run(moveBy(moving, [way[0] * step, way[1] * step]));
  return true;
}
