import { limitProblems } from '../integrity';
import { newId } from '../ids';
import { KINDS } from '../kinds/kinds';
import { newPeople } from '../people';
import { beside } from './beside';
import { putThing, thingAt, withoutFollowers } from './onPlan';
import type { Home, Id, Point, Ref } from '../home';
import type { Thing } from '../kinds/kind';
import type { Problem } from '../problem';
import type { Edit } from './edit';

function copy(draft: Home, ref: Ref, changes: Partial<Thing>): Ref {
  const { collection } = KINDS[ref.kind];
  const id = newId(draft, collection);
  (draft[collection] as Record<Id, Thing>)[id] = {
    ...structured(draft[collection][ref.id]!),
    ...changes,
    id,
  } as Thing;
  return { kind: ref.kind, id };
}

/** A draft's parts must not stand in two places; what a home holds is plain JSON. */
const structured = <T>(value: T): T => JSON.parse(JSON.stringify(value)) as T;

function duplicateOne(draft: Home, ref: Ref, delta: Point): Problem | null {
  const found = thingAt(draft, ref);
  if (!found.ok) return found.problem;
  const refusal = found.kind.uncopied?.(found.thing);
  if (refusal) return refusal;
  const followers = found.kind.follows(draft, ref.id);
  const made = copy(draft, ref, {});
  const problem = putThing(
    draft,
    made,
    found.kind.drag(draft, draft[found.kind.collection][made.id]!, delta),
  );
  // Nobody sleeps in two beds.
  const twin = made.kind === 'piece' ? draft.pieces[made.id] : undefined;
  if (twin?.kind === 'bed' || twin?.kind === 'cot') {
    const people = newPeople(draft, twin.uses.length);
    twin.uses = twin.uses.map((use, i) => ({ ...use, who: people[i]! }));
  }
  for (const follower of followers) copy(draft, follower, { room: made.id } as Partial<Thing>);
  return problem;
}

/** Copies things of the plan beside themselves, a room with its openings. */
export function duplicate(refs: readonly Ref[]): Edit {
  return {
    name: 'Duplicate',
    apply(draft) {
      const delta = beside(draft, refs);
      for (const ref of withoutFollowers(draft, refs)) {
        const problem = duplicateOne(draft, ref, delta);
        if (problem) return problem;
      }
      return limitProblems(draft)[0];
    },
  };
}
