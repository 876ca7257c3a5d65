import { KINDS } from '../kinds/kinds';
import { firstOf } from '../order';
import { memberOf, type Member, type Target } from './target';
import type { Arrangement, Collection, Home, Id } from '../home';

/** What a deletion takes along, and what stays but loses its reference. */
export interface GoesWith {
  goes: Member[];
  changes: Member[];
}

const key = ({ collection, id }: Member): string => `${collection} ${id}`;

const members = <T extends { id: Id }>(
  home: Home,
  collection: Collection,
  of: (member: T) => boolean,
): Member[] =>
  (Object.values(home[collection]) as unknown as T[]).filter(of).map(({ id }) => ({ collection, id }));

const ON_LEVEL = ['rooms', 'fixtures', 'pieces', 'sources', 'walks', 'readings', 'recordings'] as const;

/** What cannot be without a member. A meter's readings can: they count as taken with the first meter that is left. */
function dependents(home: Home, { collection, id }: Member): Member[] {
  if (collection === 'levels')
    return ON_LEVEL.flatMap((name) =>
      members<{ id: Id; level: Id }>(home, name, ({ level }) => level === id),
    );
  if (collection === 'rounds') {
    const first = firstOf(home.rounds)?.id;
    return members<{ id: Id; round: Id | null }>(home, 'readings', ({ round }) => (round ?? first) === id);
  }
  if (collection === 'meters')
    return members<{ id: Id; meter: Id; reference: Id }>(
      home,
      'comparisons',
      (c) => c.meter === id || c.reference === id,
    );
  return Object.values(KINDS)
    .filter((kind) => kind.collection === collection)
    .flatMap((kind) => kind.follows(home, id))
    .map(memberOf);
}

const inArrangements = (home: Home, part: 'pieces' | 'sources' | 'rooms', id: Id): Member[] =>
  members<Arrangement>(home, 'arrangements', (arrangement) =>
    arrangement[part].some((entry) => entry.id === id),
  );

/** What stays but speaks of a member that goes. */
function mentions(home: Home, { collection, id }: Member): Member[] {
  switch (collection) {
    case 'rooms':
      return [
        ...members<{ id: Id; mayStandIn: Id[] | null }>(
          home,
          'pieces',
          (p) => p.mayStandIn?.includes(id) ?? false,
        ),
        ...inArrangements(home, 'rooms', id),
      ];
    case 'meters': {
      const first = firstOf(home.meters)?.id;
      return (['readings', 'recordings'] as const).flatMap((name) =>
        members<{ id: Id; meter: Id | null }>(home, name, ({ meter }) => (meter ?? first) === id),
      );
    }
    case 'walks':
      return members<{ id: Id; walk: Id | null }>(home, 'readings', ({ walk }) => walk === id);
    case 'pieces':
    case 'sources':
      return inArrangements(home, collection, id);
    case 'levels':
      return members<{ id: Id; pieces: { level: Id }[] }>(home, 'arrangements', (a) =>
        a.pieces.some(({ level }) => level === id),
      );
    default:
      return [];
  }
}

/** What goes with the targets when they are deleted, and what is changed by it; the targets themselves are not listed. */
export function whatGoesWith(home: Home, targets: readonly Target[]): GoesWith {
  const asked = targets.map(memberOf);
  const gone = new Map(asked.map((member) => [key(member), member]));
  const queue = [...asked];
  for (let member = queue.pop(); member; member = queue.pop())
    for (const dependent of dependents(home, member)) {
      if (gone.has(key(dependent))) continue;
      gone.set(key(dependent), dependent);
      queue.push(dependent);
    }
  const changed = new Map<string, Member>();
  for (const member of gone.values())
    for (const mention of mentions(home, member))
      if (!gone.has(key(mention))) changed.set(key(mention), mention);
  return { goes: [...gone.values()].slice(asked.length), changes: [...changed.values()] };
}
