import { KINDS } from '../kinds/kinds';
import { put } from './check';
import { fitOpenings } from './fitOpenings';
import { memberOf, missing } from './target';
import type { Home, Ref } from '../home';
import type { Kind, Thing } from '../kinds/kind';
import type { Problem } from '../problem';

/** The thing a reference names, or why there is none. */
export function thingAt(
  home: Home,
  ref: Ref,
): { ok: true; kind: Kind; thing: Thing } | { ok: false; problem: Problem } {
  const lost = missing(home, memberOf(ref));
  if (lost) return { ok: false, problem: lost };
  const kind: Kind = KINDS[ref.kind];
  return { ok: true, kind, thing: home[kind.collection][ref.id]! };
}

/** The references without those that follow another one of them: a room's door moves with its room. */
export function withoutFollowers(home: Home, refs: readonly Ref[]): Ref[] {
  const followers = new Set(refs.flatMap((ref) => KINDS[ref.kind].follows(home, ref.id)).map(({ id }) => id));
  return refs.filter(({ id }) => !followers.has(id));
}

/** Puts a thing in the place of itself; its openings are made to fit. */
export function putThing(draft: Home, ref: Ref, thing: Thing): Problem | null {
  const { collection } = KINDS[ref.kind];
  const { id, ...fields } = thing;
  return put(draft, collection, id, fields) ?? (collection === 'rooms' ? fitOpenings(draft, id) : null);
}

/** Does one thing to each of several things of the plan; the first that is refused refuses all. */
export function forEachThing(
  draft: Home,
  refs: readonly Ref[],
  each: (kind: Kind, thing: Thing) => Thing,
): Problem | undefined {
  for (const ref of withoutFollowers(draft, refs)) {
    const found = thingAt(draft, ref);
    if (!found.ok) return found.problem;
    const problem = putThing(draft, ref, each(found.kind, found.thing));
    if (problem) return problem;
  }
  return undefined;
}
