/** What to do with a proposed place: move there; read at both places first; or stay, since no gain is clear. */
export type Decision = 'move' | 'measure-both' | 'stay';

// The project's choices, tried on known fields: below them, moves made things worse too often, or hardly better.
const SURE = 0.9;
const LIKELY = 0.7;
const WORTHWHILE = 0.1;

/** The advice: a gain under a tenth is not worth carrying furniture for, nor measuring. */
export function decide(before: number, after: number, odds: number | null): Decision {
  if (odds === null || after > (1 - WORTHWHILE) * before) return 'stay';
  return odds >= SURE ? 'move' : odds >= LIKELY ? 'measure-both' : 'stay';
}
