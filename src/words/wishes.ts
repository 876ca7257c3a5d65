import type { ArrangeWishes } from '../home/questions/arrangeQuestion';
import type { Home } from '../home/home';
import { doseWithUnit } from './numbers';

/** What may be wished of an arrangement, and what each wish does. */
export const wishWords = {
  cautious: 'Cautious',
  cautiousNote:
    'Plans on the upper end of the interval: a place that is surely low comes before one that is likely lower.',
  aim: 'The least dose',
  mean: 'for all, on average',
  'worst-off': 'for the worst off',
  aimNotes: {
    mean: 'The mean over all people is made least; one of them may have more than now.',
    'worst-off': 'Whoever has most is to have least; the mean may be higher than it could be.',
  },
} as const;

/** How the places were looked for, where somebody wished for something; else nothing. */
export function wishesSentence({ cautious, aim }: ArrangeWishes): string {
  const upper = 'on the upper end of the interval (cautious)';
  if (aim === 'worst-off')
    return `Planned for the worst off: whoever has most is to have least${cautious ? `; ${upper}` : ''}.`;
  return cautious ? `Planned ${upper}.` : '';
}

/** 'The least so far: 0.71 µT·h a day, mean over the people.' while places are tried. */
export function leastText(home: Home, least: number, { aim }: Pick<ArrangeWishes, 'aim'>): string {
  const people = new Set(Object.values(home.pieces).flatMap(({ uses }) => uses.map(({ who }) => who))).size;
  const whose = people < 2 ? '' : aim === 'worst-off' ? ' for the worst off' : ', mean over all';
  return `The least so far: ${doseWithUnit(least, home.settings.fieldUnit)} a day${whose}.`;
}
