import { indoorsOf } from '../questions/arrangeQuestion';
import { newId } from '../ids';
import { inOrder } from '../order';
import { put } from './check';
import { missing } from './target';
import type { Arrangement, Home, Id } from '../home';
import type { Edit } from './edit';

/** What an arrangement has otherwise than the home: places, sources weaker or elsewhere, rooms used for something else. */
export type Otherwise = Partial<Pick<Arrangement, 'pieces' | 'sources' | 'rooms'>>;

/** Keeps where the pieces stand now, or would, under a name, to be compared with other arrangements. */
export function keepArrangement(name: string, otherwise: Otherwise = {}): Edit {
  return {
    name: 'Keep arrangement',
    apply(draft) {
      const id = newId(draft, 'arrangements');
      draft.arrangements[id] = { id, name: '', pieces: [], sources: [], rooms: [] };
      return put(draft, 'arrangements', id, { name, ...standing(draft, otherwise) }) ?? undefined;
    },
  };
}

function standing(home: Home, otherwise: Otherwise): Required<Otherwise> {
  const over = <T extends { id: Id }>(own: T[], others: T[] = []): T[] =>
    own.map((one) => ({ ...(others.find(({ id }) => id === one.id) ?? one) }));
  return {
    pieces: over(
      inOrder(home.pieces).map(({ id, level, at, angle }) => ({ id, level, at, angle })),
      otherwise.pieces,
    ),
    sources: over(
      inOrder(home.sources).map(({ id }) => ({ id, scale: 1, path: null })),
      otherwise.sources,
    ),
    rooms: over(
      indoorsOf(home).map(({ id, use }) => ({ id, use })),
      otherwise.rooms,
    ),
  };
}

/** Gives an arrangement another name. */
export const renameArrangement = (id: Id, name: string): Edit => ({
  name: 'Rename arrangement',
  apply: (draft) =>
    missing(draft, { collection: 'arrangements', id }) ??
    put(draft, 'arrangements', id, { name }) ??
    undefined,
});
