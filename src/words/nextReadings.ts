import type { Effect, NextReading } from '../engine/nextReadings/request';
import type { Home } from '../home/home';
import { fixedText, intervalText, oddsText, percentText, unitName } from './numbers';
import { furnitureName, roomName } from './things';

export const nextWords = {
  title: 'Read next',
  for: 'to make surer',
  nothing: 'choose',
  map: 'the whole map',
  choice: 'whether to move',
  given: 'both places before deciding',
  working: 'Looking for places…',
  cancel: 'Cancel',
  stale: 'The home has changed since.',
  readHere: 'Read here',
};

/** What a reading is expected to do: 'Bed narrows from 0.25–0.49 to 0.28–0.45 µT'. */
export function whyReadText(home: Home, { effect, drawn }: Pick<NextReading, 'effect' | 'drawn'>): string {
  const parts = [
    ...(drawn >= 1 ? [`${fixedText(drawn, 0)} m² of hatched floor come to be drawn`] : []),
    ...(effect ? [effectText(home, effect)] : []),
  ];
  return parts.join('; ');
}

function effectText(home: Home, effect: Effect): string {
  if (effect.kind === 'choice')
    return `the chance to tell whether ${furnitureName(home, effect.id)} is better there rises from ${oddsText(effect.before)} to ${oddsText(effect.after)}`;
  const unit = home.settings.fieldUnit;
  const name =
    effect.kind === 'room' ? `the middle of ${roomName(home, effect.id)}` : furnitureName(home, effect.id);
  const [before, after] = [effect.before, effect.after].map(([low, high]) => intervalText(low, high, unit));
  if (before !== after) return `${name} narrows from ${before} to ${after} ${unitName(unit)}`;
  const width = ([low, high]: [number, number]) => Math.log(high / low);
  return `${name} narrows by ${percentText(1 - width(effect.after) / width(effect.before))}`;
}

/** Said at the end of a list that has nothing to add. */
export const enoughSentence = (listed: number): string =>
  listed === 0
    ? 'Enough: no further reading here would narrow it by a tenth of what is open.'
    : 'After these it is enough: no further reading would narrow it by a tenth of what is then open.';
