import { fieldsOf } from '../dose/fieldAt';
import { doubtOf, supports } from './ground';
import { roomAt } from './site';
import { ruleBook } from './ruleBook';
import { zoneOf } from '../dose/zones';
import type { ArrangeRequest } from './request';
import type { BrokenRule } from './rules';
import type { Put } from './place';

/**
 * Every rule that a piece breaks where it is put, as the book of the request has it (see `ruleBook`), and whether the map
 * speaks for the place. Empty: a place the planner might have proposed.
 */
export function brokenRules(request: ArrangeRequest, put: Put, others: readonly Put[] = []): BrokenRule[] {
  const broken = ruleBook(request).broken(put, others);
  return isUnsupported(request, put) ? [{ kind: 'unsupported', with: null }, ...broken] : broken;
}

function isUnsupported(request: ArrangeRequest, { id, level, at, angle }: Put): boolean {
  const piece = request.pieces.find((one) => one.id === id);
  const room = roomAt(request, level, at);
  if (!piece || !room || piece.uses.length === 0) return false;
  const map = doubtOf(fieldsOf(request.fitted)(level, piece.height), room.outline);
  return piece.uses.some(({ side }) => !supports(map, zoneOf(piece.kind, { at, angle }, piece.size, side)));
}
