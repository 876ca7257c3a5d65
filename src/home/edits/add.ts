import { COMPLETE } from '../complete';
import { limitProblems, memberProblems } from '../integrity';
import { newId } from '../ids';
import { firstOf } from '../order';
import { newUses } from '../people';
import { giveBothSides } from './bothSides';
import { checkFields } from './check';
import type * as z from 'zod/mini';
import type { Collection, Home, Id } from '../home';
import type { MEMBERS } from '../schema';
import type { Edit } from './edit';

/** What a new member is made from: the fields as in the file, without an id. What is left out has its default. */
export type Fields<C extends Collection> = Lasting<Omit<z.input<(typeof MEMBERS)[C]>, 'id'>>;

type Lasting<T> = T extends object ? { readonly [K in keyof T]: Lasting<T[K]> } : T;

const adder =
  <C extends Collection>(collection: C, name: string) =>
  (fields: Fields<C>): Edit => ({
    name,
    apply(draft) {
      const id = newId(draft, collection);
      const checked = checkFields(collection, id, { ...fields, id });
      if (!checked.ok) return checked.problem;
      const complete = COMPLETE[collection] as (member: object, level: Id) => Home[C][Id];
      (draft[collection] as Record<Id, unknown>)[id] = complete(checked.fields, firstOf(draft.levels)!.id);
      return [...limitProblems(draft), ...memberProblems(draft, collection, id)][0];
    },
  });

export const addLevel = adder('levels', 'Add level');
export const addRoom = adder('rooms', 'Add room');
export const addOpening = adder('openings', 'Add opening');
export const addFixture = adder('fixtures', 'Add fixture');
const addUsedPiece = adder('pieces', 'Add piece');
/** A piece that nobody is said to use is taken to be used as such a piece is, by people who have none yet. */
export const addPiece = (fields: Fields<'pieces'>): Edit => ({
  name: 'Add piece',
  apply(draft) {
    const problem = addUsedPiece(fields).apply(draft);
    if (problem || fields.uses) return problem;
    const piece = draft.pieces[`p${draft.lastIds.p}`]!;
    piece.uses = [];
    piece.uses = newUses(draft, piece.kind, piece.size);
    if (!fields.access) giveBothSides(draft, piece.id);
  },
});
export const addSource = adder('sources', 'Add source');
export const addMeter = adder('meters', 'Add meter');
export const addRound = adder('rounds', 'Add round');
export const addWalk = adder('walks', 'Add walk');
export const addReading = adder('readings', 'Add reading');
export const addRecording = adder('recordings', 'Add recording');
export const addComparison = adder('comparisons', 'Compare meters');
export const addGuideline = adder('guidelines', 'Add guideline');
