import { put } from './check';
import { missing } from './target';
import type { Id, Point } from '../home';
import type { Edit } from './edit';

/** Where a piece is to stand. */
export interface Place {
  id: Id;
  level: Id;
  at: Point;
  angle: number;
}

/** Moves pieces to given places in one step: a proposal that was accepted, or an arrangement that was kept. */
export function placePieces(places: readonly Place[], name = 'Move furniture'): Edit {
  return {
    name,
    apply(draft) {
      for (const { id, level, at, angle } of places) {
        const problem =
          missing(draft, { collection: 'pieces', id }) ?? put(draft, 'pieces', id, { level, at, angle });
        if (problem) return problem;
      }
    },
  };
}
