import { COLLECTIONS } from '../ids';
import type { Path, IntegrityProblem } from '../problem';
import type { HomeFile } from '../schema';

/** Ids are unique in the whole file, for they name things on paper too. */
export function idsTwice(file: HomeFile): IntegrityProblem[] {
  const seen = new Map<string, Path>();
  return COLLECTIONS.flatMap((name) =>
    file[name].flatMap(({ id }, index): IntegrityProblem[] => {
      if (id === undefined) return [];
      const path = [name, index, 'id'];
      const first = seen.get(id);
      if (first) return [{ kind: 'id-twice', path, id, first }];
      seen.set(id, path);
      return [];
    }),
  );
}
