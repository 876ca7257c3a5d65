/** What to do with a proposed place: move there; read at both places first; or stay, since no gain is clear. */
export type Decision = 'move' | 'measure-both' | 'stay';

// The project's choices, tried on known fields: below them, moves made things worse too often, or hardly better.
const SURE = 0.9;
export const LIKELY = 0.7;
const WORTHWHILE = 0.1;

/** The advice: a gain under a tenth is not worth carrying furniture for, nor measuring. */
export function decide(before: number, after: number, odds: number | null): Decision {
  if (odds === null || after > (1 - WORTHWHILE) * before) return 'stay';
  return odds >= SURE ? 'move' : odds >= LIKELY ? 'measure-both' : 'stay';
}

interface Person {
  before: { dose: number } | null;
  after: { dose: number } | null;
  odds: number | null;
}

/** The same for whoever is worst off: by the most that anyone has, before and after, and how surely whoever has most now gains. */
export function decideForWorstOff(people: readonly Person[]): Decision {
  const most = (when: 'before' | 'after') => Math.max(0, ...people.map((one) => one[when]?.dose ?? 0));
  const worst = people.find(({ before }) => before !== null && before.dose === most('before'));
  return decide(most('before'), most('after'), worst?.odds ?? null);
}
