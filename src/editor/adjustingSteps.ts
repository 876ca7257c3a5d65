import type { Answer } from '../engine/arranging/arrange';
import type { Adjusted } from './editor';

/** When a step was made: at which of the planner's answers, and after which step of the home's history. */
interface Moment {
  of: Answer | null;
  last: unknown;
}

interface Step {
  at: Moment;
  /** How the answer stood on the other side of the step; null: as the planner has it. */
  adjusted: Adjusted | null;
}

/**
 * Steps by which a hand changed an answer, back and forth. They come before the home's own as long as nothing has been done to
 * the home since, so that undo always takes back what was done last.
 */
export function createAdjustingSteps(put: (adjusted: Adjusted | null) => void) {
  let done: Step[] = [];
  let undone: Step[] = [];

  const isOf = (step: Step | undefined, { of, last }: Moment) => step?.at.of === of && step.at.last === last;
  const go = (from: Step[], to: Step[], now: Adjusted | null): boolean => {
    const step = from.pop();
    if (!step) return false;
    to.push({ at: step.at, adjusted: now });
    put(step.adjusted);
    return true;
  };

  return {
    push(at: Moment, before: Adjusted | null) {
      done.push({ at, adjusted: before });
      undone = [];
    },
    canUndo: (now: Moment) => isOf(done.at(-1), now),
    canRedo: (now: Moment) => isOf(undone.at(-1), now),
    undo: (now: Adjusted | null) => go(done, undone, now),
    redo: (now: Adjusted | null) => go(undone, done, now),
    clear() {
      done = [];
      undone = [];
    },
  };
}
