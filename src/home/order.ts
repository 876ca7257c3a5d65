import type { Id } from './home';

/** Parts of an id: `m12` is letter `m`, number 12; a round's `b` is letter `b`, number 0. */
function idParts(id: Id): { letter: string; number: number } {
  const digits = /\d*$/.exec(id)![0];
  return { letter: id.slice(0, id.length - digits.length), number: digits === '' ? 0 : Number(digits) };
}

/** The natural order of ids: a, b, … z, aa; m2 before m12. */
export function compareIds(a: Id, b: Id): number {
  if (a === b) return 0;
  const x = idParts(a);
  const y = idParts(b);
  if (x.letter.length !== y.letter.length) return x.letter.length - y.letter.length;
  if (x.letter !== y.letter) return x.letter < y.letter ? -1 : 1;
  if (x.number !== y.number) return x.number - y.number;
  return a < b ? -1 : 1;
}

/** The members of a collection in the natural order of their ids. */
export function inOrder<T extends { id: Id }>(collection: Record<Id, T>): T[] {
  return Object.values(collection).sort((a, b) => compareIds(a.id, b.id));
}

/** The first member in natural order, or null: what a reading without a round or meter belongs to. */
export function firstOf<T extends { id: Id }>(collection: Record<Id, T>): T | null {
  return inOrder(collection)[0] ?? null;
}
