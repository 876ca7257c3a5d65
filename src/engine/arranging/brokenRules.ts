import { fieldsOf, type FieldAt } from '../dose/fieldAt';
import { mapOver } from './mapOver';
import { ruleBook } from './ruleBook';
import type { ArrangeRequest } from './request';
import type { BrokenRule } from './rules';
import type { Put } from './place';

/** Every rule that a piece breaks where it is put, among others where they are put. */
export type RulesAt = (put: Put, others?: readonly Put[]) => BrokenRule[];

/**
 * Tells every rule that a piece breaks where it is put, as the book of the request has it (see `ruleBook`), and whether the map
 * speaks for the place. None: a place the planner might have proposed. What rooms ask and how far the map can be trusted is
 * worked out once for all places.
 */
export function brokenRules(request: ArrangeRequest, fieldAt: FieldAt = fieldsOf(request.fitted)): RulesAt {
  const book = ruleBook(request);
  const { speaksFor } = mapOver(request, fieldAt, request.fitted);
  const isUnsupported = (put: Put): boolean => {
    const piece = request.pieces.find(({ id }) => id === put.id);
    return piece !== undefined && !speaksFor(piece, put);
  };
  return (put, others = []) => {
    const broken = book.broken(put, others);
    return isUnsupported(put) ? [{ kind: 'unsupported', with: null }, ...broken] : broken;
  };
}
