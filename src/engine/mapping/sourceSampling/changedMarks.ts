import { noElements, PER_ELEMENT, type Elements } from './elements';
import { roomFor, slotsIn } from './model';
import type { Point } from '../../geometry/point';
import type { Sample } from './samples';
import type { SamplingQuestion } from './question';

/** What is made of a mark once its readings were taken: where it is then, and its field times `scale`. */
interface ChangedMark {
  path: readonly Point[];
  scale: number;
}

/** Whether the marks are otherwise, one a mark of the question, than when the readings were taken. */
export type ChangedMarks = readonly ChangedMark[];

/**
 * Writes the wires and dipoles of a sample as they are with the marks changed: what was found of a source, its current and how far off its mark
 * it lies, goes with the mark; sources that nobody marked stay.
 */
export function changedWriter(
  question: SamplingQuestion,
  changed: ChangedMarks,
): (sources: Sample['sources']) => Elements {
  const marked = question.marked.map((mark, k) => ({ ...mark, path: changed[k].path }));
  const scaleOf = new Map(marked.map((mark, k) => [mark, changed[k].scale]));
  const slots = new Map(slotsIn({ ...question, marked }).map((slot) => [slot.key, slot]));
  const room = roomFor(marked);
  return (sources) => {
    const elements = noElements(Math.max(1, room * sources.length));
    for (const { slot: key, latents } of sources) {
      const slot = slots.get(key);
      if (!slot) continue;
      const first = elements.count;
      slot.write(Float64Array.from(latents), 0, elements);
      const scale = typeof slot.of === 'string' ? 1 : (scaleOf.get(slot.of) ?? 1);
      if (scale !== 1) scaleFrom(elements, first, scale);
    }
    return elements;
  };
}

/** Currents and moments of all elements from one on, times a number. */
function scaleFrom({ count, kinds, numbers }: Elements, first: number, scale: number): void {
  for (let e = first; e < count; e++) {
    const [from, end] = kinds[e] === 0 ? [6, 8] : [3, 9];
    for (let i = from; i < end; i++) numbers[e * PER_ELEMENT + i] *= scale;
  }
}
