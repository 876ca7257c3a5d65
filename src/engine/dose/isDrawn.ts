import type { Field } from '../mapping/field';
import type { Point } from '../geometry/point';

/** A zone is spoken for by the map where this share of it is drawn: the project's choice. */
export const SUPPORTED_SHARE = 0.95;

/** Whether an estimate deserves to be shown over nearly all of some equal cells, given by their middles, wherever they lie. */
export function isDrawn(field: Pick<Field, 'support'>, cells: readonly Point[]): boolean {
  const { doubt } = field.support(
    cells.map(([x]) => x),
    cells.map(([, y]) => y),
  );
  return doubt.filter((value) => value <= 1).length >= SUPPORTED_SHARE * cells.length;
}
