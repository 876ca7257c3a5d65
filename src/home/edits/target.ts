import { KINDS } from '../kinds/kinds';
import type { Collection, Home, Id, Ref } from '../home';
import type { EditProblem } from '../problem';

/** A member of any collection; levels, meters and rounds are no things on the plan and have no `Ref`. */
export interface Member {
  collection: Collection;
  id: Id;
}

/** What an edit is about. */
export type Target = Ref | Member;

export const memberOf = (target: Target): Member =>
  'collection' in target ? target : { collection: KINDS[target.kind].collection, id: target.id };

/** Why nothing can be done to a member that is gone. */
export const missing = (home: Home, { collection, id }: Member): EditProblem | null =>
  Object.hasOwn(home[collection], id) ? null : { kind: 'not-there', collection, id };
