import type { LengthUnit } from '../../../home/home';
import { tooLittleSentence, tooMuchSentence } from '../../../words/rules';
import { typedLength, type Typed } from '../../controls/typed';

/** More than this no room has: metres. */
const MOST = 3;

/** Reads the length of a rule that may not be lowered below `least` metres. */
export function typedRule(unit: LengthUnit, least: number) {
  const length = typedLength(unit, 'notNegative');
  return (text: string): Typed<number> => {
    const typed = length(text);
    if (!typed.ok) return typed;
    if (typed.value < least) return { ok: false, sentence: tooLittleSentence(text.trim(), least, unit) };
    if (typed.value > MOST) return { ok: false, sentence: tooMuchSentence(text.trim(), MOST, unit) };
    return typed;
  };
}
