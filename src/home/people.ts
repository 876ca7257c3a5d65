import { hoursAt } from './kindDefaults';
import type { Home, PieceKind, Use } from './home';

/** Metres: a mattress from this width on is sold for two (a small double is 1.2 m and mostly slept in by one). */
const FOR_TWO = 1.35;

const named = (home: Home): Set<string> =>
  new Set(Object.values(home.pieces).flatMap(({ uses }) => uses.map(({ who }) => who)));

/** Names for so many people who are not in the home yet: numbers, since letters are the pieces'. */
export function newPeople(home: Home, count: number): string[] {
  const known = named(home);
  const people: string[] = [];
  for (let n = 1; people.length < count; n += 1) if (!known.has(`person ${n}`)) people.push(`person ${n}`);
  return people;
}

/** Who uses a new piece where nobody says: everybody sleeps in one bed only; at a desk sits who was first. */
export function newUses(home: Home, kind: PieceKind, [width]: readonly [number, number]): Use[] {
  const hours = hoursAt(kind);
  if (hours === 0) return [];
  if (kind === 'desk') return [{ who: [...named(home)][0] ?? 'person 1', side: 'middle', hours }];
  if (kind !== 'bed' || width < FOR_TWO)
    return newPeople(home, 1).map((who) => ({ who, side: 'middle', hours }));
  return newPeople(home, 2).map((who, i) => ({ who, side: i === 0 ? 'left' : 'right', hours }));
}
