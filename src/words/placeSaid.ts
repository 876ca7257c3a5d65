import type { ZoneDose } from '../engine/dose/dose';
import type { BrokenRule } from '../engine/arranging/rules';
import type { Home, Piece } from '../home/home';
import { brokenRuleText } from './brokenRules';
import { doseWithUnit, intervalText } from './numbers';
import { thingName } from './things';

interface Said {
  dose: Pick<ZoneDose, 'dose' | 'low' | 'high'> | null;
  broken: readonly BrokenRule[];
}

/** What is heard of a piece where it is put: 'Bed: 1.9 µT·h (1.5–2.4). The door to the hall would strike it.' */
export function placeSaid(home: Home, piece: Piece, { dose, broken }: Said): string {
  const unit = home.settings.fieldUnit;
  const name = thingName(home, { kind: 'piece', id: piece.id });
  const there = dose ? `: ${doseWithUnit(dose.dose, unit)} (${intervalText(dose.low, dose.high, unit)})` : '';
  const rules = broken.map((rule) => brokenRuleText(home, piece, rule));
  return [`${name}${there}.`, ...(rules.length > 0 ? rules : ['It breaks no rule there.'])].join(' ');
}
