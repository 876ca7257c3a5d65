import type { BrokenRule } from '../engine/arranging/rules';
import type { Home } from '../home/home';
import { ruleSentence } from './arranging';
import { pieceShort } from './furniture';

/** Why a piece may not stand somewhere, with what is in its way by its name. */
export function ruleText(home: Home, rule: BrokenRule): string {
  const { with: id } = rule;
  const name = id === null ? null : home.pieces[id] ? pieceShort(home, id) : home.fixtures[id]?.name || null;
  return ruleSentence(rule, name);
}
