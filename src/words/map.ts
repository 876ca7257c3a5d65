import type { FittedSurvey } from '../engine/mapping/fitSurvey';
import { methodName } from './assessment';
import { countText, percentText } from './numbers';

export const map = {
  title: 'Why believe this map',
  before: 'Each reading was predicted without itself. ',
  of: (inside: number, all: number) => `${inside} of ${all}`,
  after: (expected: string) => ` lie inside their 90\u2009% interval (${expected}).`,
  noMapTitle: 'No map yet',
  fromThird: 'The map draws from the third reading of a level and a round.',
  toSurvey: 'Take readings',
  method: 'method',
  typicalError: 'typical error',
  error: (factor: string) => `× ${factor}`,
  noError: 'not to be told',
  inUse: 'in use',
  others:
    '× 1.5 means that a reading left out is typically missed by half as much again, over or under. Press a method to see the map it draws.',
  sampling: (share: number) => `Sampling the sources that may explain the readings: ${percentText(share)}.`,
  stopSampling: 'Stop',
  sampled: 'The map now comes from source sampling.',
  beingSampled: 'being sampled',
  unsampled: 'Source sampling was stopped; the best of the others draws the map.',
  startSampling: 'Sample now',
  notSampled: 'Source sampling takes from 3 to 150 places; the best of the others draws the map.',
  how: 'How it is drawn',
  hatched: 'Hatched ground has no reading near enough to speak for it, or too much is left open there.',
  drawn: (share: string) => `${share} of the floor inside the walls is drawn.`,
  height: (height: string) =>
    `The map lies ${height} above the floor. A reading at another height counts with a wider interval.`,
  interval:
    'Intervals speak of what this survey leaves open between its places, not of other days or of the meter being wrong everywhere alike.',
};

/** Why this method draws the map, for whoever has met none of them. */
export function whySentence({ why, method }: Pick<FittedSurvey, 'why' | 'method'>): string {
  switch (why.kind) {
    case 'asked':
      return `You chose ${methodName(method)}.`;
    case 'least-error':
      return `Every method had to predict each reading from the others: ${methodName(method)} came closest.`;
    case 'samples-hold':
      return 'Source sampling predicts the left-out readings about as well as the best of the rest, from fewer of them: between readings its map lies nearer.';
    case 'unclear':
      return `The left-out readings are predicted a little better by ${methodName(why.other)}, but not clearly: ${why.other === 'inverse-distance' ? 'that can be luck' : 'a mark in the wrong place can do that by luck'}, so ${methodName(method)} draws the map.`;
    case 'not-compared':
      return 'Too few places were read to compare methods.';
  }
}

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
