import type { LevelPicture } from '../../engine/assess';
import type { Answers } from './protocol';

const ofPicture = ({ mean, variance, doubt, reason }: LevelPicture) =>
  [mean, variance, doubt, reason].flatMap((array) => (array ? [array.buffer as ArrayBuffer] : []));

/** The large arrays of an answer, to be handed over with it: a worker has no use for them once they are sent. */
export function buffersOf(answer: Answers[keyof Answers]): ArrayBuffer[] {
  if ('pictures' in answer) return [...new Set(answer.pictures.flatMap(ofPicture))];
  return 'grid' in answer ? ofPicture(answer) : [];
}
