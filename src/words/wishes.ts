import type { ArrangeWishes } from '../home/questions/arrangeQuestion';
import type { Home } from '../home/home';
import type { Worth } from '../engine/arranging/compare';
import type { Answer } from '../engine/arranging/arrange';
import { doseText, doseWithUnit, oddsText } from './numbers';

/** What may be wished of an arrangement, and what each wish does. */
export const wishWords = {
  title: 'What is looked for',
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

/** 'lower: 96 %', 'higher: 99 %', or that nothing changes for this person. */
export function personText({ moves, before, after, odds }: Omit<Worth, 'decision'>): string {
  if (!before || !after) return 'uses nothing';
  if (!moves || odds === null) return 'as now';
  return after.dose < before.dose ? `lower: ${oddsText(odds)}` : `higher: ${oddsText(1 - odds)}`;
}

/** 'The most that anyone has: 1.9 (person 1) to 0.91 µT·h (person 2).' */
export function worstOffSentence(home: Home, { people }: Pick<Answer, 'people'>): string {
  const [before, after] = (['before', 'after'] as const).map((when) =>
    people.reduce<{ who: string; dose: number } | null>((most, one) => {
      const dose = one[when]?.dose ?? null;
      return dose === null || (most && most.dose >= dose) ? most : { who: one.who, dose };
    }, null),
  );
  if (!before || !after) return '';
  const unit = home.settings.fieldUnit;
  return `The most that anyone has: ${doseText(before.dose, unit)} (${before.who}) to ${doseWithUnit(after.dose, unit)} (${after.who}).`;
}
