import type { EvidenceRow } from '../engine/mapping/fitSurvey';
import type { Why } from '../engine/mapping/choose';
import type { FieldUnit } from '../home/home';
import { countText, intervalText, percentText, unitName, withUnit } from './numbers';
import { correctedText } from './survey';
import { numberOf } from './things';

export const map = {
  title: 'Why believe this map',
  before: 'Each reading was predicted without itself. ',
  of: (inside: number, all: number) => `${inside} of ${all}`,
  after: ' fell inside their 90\u2009% interval.',
  noMapTitle: 'No map yet',
  fromThird: 'The map draws from the third reading of a level and a round.',
  toSurvey: 'Take readings',
  across: (unit: FieldUnit) => `across: read, ${unitName(unit)}`,
  up: (unit: FieldUnit) => `up: predicted, ${unitName(unit)}`,
  plot: 'Readings against what the others predict for them',
  plotLines: 'Between the dotted lines nine of ten would lie.',
  plotKeys: 'Arrow keys step through the readings, lowest first.',
  method: 'method',
  typicalError: 'typical error',
  error: (factor: string) => `× ${factor}`,
  noError: 'not to be told',
  inUse: 'in use',
  notYet: 'The method this home asks for is not in this version; the best of these is used.',
  how: 'How it is drawn',
  hatched: 'Hatched ground has no reading near enough to speak for it, or too much is left open there.',
  drawn: (share: string) => `${share} of the floor inside the walls is drawn.`,
  height: (height: string) =>
    `The map lies ${height} above the floor. A reading at another height counts with a wider interval.`,
  interval:
    'Intervals speak of what this survey leaves open between its places, not of other days or of the meter being wrong everywhere alike.',
};

/** Why this method draws the map. */
export function whySentence(why: Why): string {
  switch (why.kind) {
    case 'asked':
      return 'You chose this method.';
    case 'least-error':
      return 'It predicts the left-out readings best.';
    case 'marks-unclear':
      return 'Source kriging predicts the left-out readings a little better, but not clearly: the marks may mislead, so it is not used by itself.';
    case 'not-compared':
      return 'Too few places to compare methods.';
  }
}

/** A reading of the plot, in a sentence; `shown` is what the display showed where the meter's correction makes it another. */
export function evidenceRowText(row: EvidenceRow, unit: FieldUnit, shown: number | null): string {
  const names = row.ids.map(numberOf).join(', ');
  const inside = row.read >= row.low && row.read <= row.high;
  return `Reading ${names}: ${readText(row.read, shown, unit)}, ${withUnit(row.predicted, unit)} predicted (${intervalText(row.low, row.high, unit)}), ${inside ? 'inside' : 'outside'}.`;
}

/** '0.49 read, 0.44 corrected', or '0.44 µT read' where the display is taken as it is. */
const readText = (corrected: number, shown: number | null, unit: FieldUnit): string =>
  shown === null ? `${withUnit(corrected, unit)} read` : correctedText(shown, corrected, unit);

/** Where the misses lie: 'The misses lie in the hall and the kitchen.' */
export function missesSentence(rooms: readonly string[]): string {
  if (rooms.length === 0) return '';
  const named = rooms.slice(0, 3);
  const list = named.length === 1 ? named[0]! : `${named.slice(0, -1).join(', ')} and ${named.at(-1)}`;
  return rooms.length > 3
    ? `The misses lie in ${countText(rooms.length, 'room')}.`
    : `The misses lie in: ${list}.`;
}

export const drawnText = (share: number): string => map.drawn(percentText(share));
