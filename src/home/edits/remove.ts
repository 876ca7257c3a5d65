import { memberOf, missing, type Target } from './target';
import { whatGoesWith } from './whatGoesWith';
import type { Home, Id } from '../home';
import type { Edit } from './edit';

/** Takes ids that no longer exist out of everything that stays. */
function forget(draft: Home): void {
  const gone = (
    collection: 'meters' | 'walks' | 'rooms' | 'pieces' | 'sources' | 'levels',
    id: Id | null,
  ): boolean => id !== null && !Object.hasOwn(draft[collection], id);
  for (const reading of Object.values(draft.readings)) {
    if (gone('meters', reading.meter)) reading.meter = null;
    if (gone('walks', reading.walk)) reading.walk = null;
  }
  for (const recording of Object.values(draft.recordings))
    if (gone('meters', recording.meter)) recording.meter = null;
  for (const piece of Object.values(draft.pieces)) {
    if (!piece.mayStandIn?.some((room) => gone('rooms', room))) continue;
    const left = piece.mayStandIn.filter((room) => !gone('rooms', room));
    piece.mayStandIn = left.length > 0 ? left : null;
  }
  for (const arrangement of Object.values(draft.arrangements)) {
    if (arrangement.pieces.some(({ id, level }) => gone('pieces', id) || gone('levels', level)))
      arrangement.pieces = arrangement.pieces.filter(
        ({ id, level }) => !gone('pieces', id) && !gone('levels', level),
      );
    if (arrangement.sources.some(({ id }) => gone('sources', id)))
      arrangement.sources = arrangement.sources.filter(({ id }) => !gone('sources', id));
    if (arrangement.rooms.some(({ id }) => gone('rooms', id)))
      arrangement.rooms = arrangement.rooms.filter(({ id }) => !gone('rooms', id));
  }
  const { base } = draft.settings;
  if (base !== null && !Object.hasOwn(draft.recordings, base)) draft.settings.base = null;
}

/** Deletes the targets and what goes with them; what stays forgets them. The last level and the last round stay. */
export function remove(targets: readonly Target[]): Edit {
  return {
    name: 'Remove',
    apply(draft) {
      const asked = targets.map(memberOf);
      for (const member of asked) {
        const lost = missing(draft, member);
        if (lost) return lost;
      }
      const { goes } = whatGoesWith(draft, targets);
      const guidelines = new Set<Id>();
      for (const { collection, id } of [...asked, ...goes]) {
        delete (draft[collection] as Record<Id, unknown>)[id];
        if (collection === 'guidelines') guidelines.add(id);
      }
      for (const collection of ['levels', 'rounds'] as const)
        if (Object.keys(draft[collection]).length === 0) return { kind: 'last-one', collection };
      if (guidelines.has(draft.settings.guideline)) draft.settings.guideline = 'common-practice';
      forget(draft);
    },
  };
}
