import type { ArrangeWishes } from '../home/questions/arrangeQuestion';
import type { Home } from '../home/home';
import { inOrder } from '../home/order';
import { accessOf } from '../home/kindDefaults';
import { pieceShort } from './canvas';
import { changedRules, changedText, listText, stripsText } from './rules';
import { wishesSentence } from './wishes';

export const arrangementWords = {
  people: 'What each person has, a day',
  others: 'Other answers',
  person: 'person',
  answer: 'answer',
  piece: 'piece',
  whole: 'home as a whole',
  odds: 'how surely',
};

/** How the places were looked for, and which rules were not as this tool has them; nothing where all was as by default. */
export function askedSentences(home: Home, wishes: ArrangeWishes): string[] {
  const { rules, lengthUnit } = home.settings;
  const changed = changedRules(rules).map((rule) => changedText(rule, rules, lengthUnit));
  const strips = inOrder(home.pieces)
    .filter(({ kind, size, uses, access }) => {
      const usual = accessOf(kind, size, uses);
      return (['left', 'right', 'foot'] as const).some((side) => access[side] < usual[side]);
    })
    .map((piece) => `free floor beside ${pieceShort(home, piece.id)}: ${stripsText(piece, lengthUnit)}`);
  const lowered = [...changed, ...strips];
  return [
    wishesSentence(wishes),
    lowered.length > 0 ? `Rules that are not as this tool has them: ${listText(lowered)}.` : '',
  ].filter(Boolean);
}
