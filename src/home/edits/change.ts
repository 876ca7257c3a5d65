import { giveBothSides } from './bothSides';
import { fitOpenings } from './fitOpenings';
import { put } from './check';
import { memberOf, missing, type Target } from './target';
import type { Collection, Home, Id } from '../home';
import type { Edit } from './edit';

const NAMES: Record<Collection, string> = {
  levels: 'Change level',
  rooms: 'Change room',
  openings: 'Change opening',
  fixtures: 'Change fixture',
  pieces: 'Change piece',
  sources: 'Change source',
  meters: 'Change meter',
  rounds: 'Change round',
  walks: 'Change walk',
  readings: 'Change reading',
  recordings: 'Change recording',
  comparisons: 'Change comparison',
  arrangements: 'Change arrangement',
  guidelines: 'Change guideline',
};

/** Any fields of any member, but its id. */
export type Patch = Partial<Omit<Home[Collection][Id], 'id'>> | Record<string, unknown>;

/** Gives some fields of a member new values, by the rules of the file; a wrong one refuses the whole change. */
export function change(target: Target, patch: Patch): Edit {
  const member = memberOf(target);
  const { collection, id } = member;
  return {
    name: NAMES[collection],
    apply(draft) {
      const lost = missing(draft, member);
      if (lost) return lost;
      if ('id' in patch) return { kind: 'field-not-changeable', path: [collection, id, 'id'] };
      const problem =
        put(draft, collection, id, patch) ?? (collection === 'rooms' ? fitOpenings(draft, id) : null);
      if (problem) return problem;
      if (collection === 'pieces' && 'uses' in patch) giveBothSides(draft, id);
      return undefined;
    },
  };
}
