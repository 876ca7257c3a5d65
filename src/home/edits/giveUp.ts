import { put, putPart } from './check';
import { missing } from './target';
import type { Edit } from './edit';
import type { Home } from '../home';
import type { Problem } from '../problem';
import type { Relaxation } from '../../engine/arranging/relax';

/** Asks for less of a livable room, so that furniture fits that did not: narrower strips, landings and ways, a desk sideways. */
export function giveUp(changes: readonly Relaxation[]): Edit {
  return {
    name: 'Ask for less',
    apply(draft) {
      for (const change of changes) {
        const problem = applyOne(draft, change);
        if (problem) return problem;
      }
    },
  };
}

function applyOne(draft: Home, change: Relaxation): Problem | null {
  if (change.kind === 'strip') {
    const { piece: id, side, to } = change;
    const lost = missing(draft, { collection: 'pieces', id });
    return lost ?? put(draft, 'pieces', id, { access: { ...draft.pieces[id]!.access, [side]: to } });
  }
  const rule = change.kind === 'desk-sideways' ? { deskSideways: true } : { [change.kind]: change.to };
  return putPart(draft, 'settings', { rules: { ...draft.settings.rules, ...rule } });
}
