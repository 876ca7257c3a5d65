import { fieldsOf, type FieldAt } from '../dose/fieldAt';
import { doubtOf, supports } from './ground';
import { keptBy } from './plan';
import { roomAt } from './site';
import { ruleBook } from './ruleBook';
import { zoneOf } from '../dose/zones';
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
  const doubtIn = keptBy((room) => {
    const { level, outline } = request.rooms.find(({ id }) => id === room)!;
    return keptBy((height) => doubtOf(fieldAt(level, Number(height)), outline));
  });
  const isUnsupported = ({ id, level, at, angle }: Put): boolean => {
    const piece = request.pieces.find((one) => one.id === id);
    const room = roomAt(request, level, at);
    if (!piece || !room || piece.uses.length === 0) return false;
    const doubt = doubtIn(room.id)(String(piece.height));
    return piece.uses.some(
      ({ side }) => !supports(doubt, zoneOf(piece.kind, { at, angle }, piece.size, side)),
    );
  };
  return (put, others = []) => {
    const broken = book.broken(put, others);
    return isUnsupported(put) ? [{ kind: 'unsupported', with: null }, ...broken] : broken;
  };
}
