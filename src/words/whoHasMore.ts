import type { Answer } from '../engine/arranging/arrange';
import { LIKELY } from '../engine/arranging/decide';
import type { Home } from '../home/home';
import { doseText, doseWithUnit, oddsText } from './numbers';

/**
 * 'More for person 3: 0.63 to 0.75 µT·h a day (higher: 92 %).' of everybody whose dose is likely to rise; empty where nobody's is, or
 * where there is one person, who is the whole.
 */
export function moreSentence(home: Home, { people }: Pick<Answer, 'people'>): string {
  if (people.length < 2) return '';
  const unit = home.settings.fieldUnit;
  const clauses = people.flatMap(({ who, moves, before, after, odds }) => {
    const higher = odds === null ? 0 : 1 - odds;
    if (!moves || !before || !after || after.dose <= before.dose || higher < LIKELY) return [];
    const change = `${doseText(before.dose, unit)} to ${doseWithUnit(after.dose, unit)}`;
    return [`for ${who}: ${change} a day (higher: ${oddsText(higher)})`];
  });
  return clauses.length > 0 ? `More ${clauses.join('; ')}.` : '';
}
