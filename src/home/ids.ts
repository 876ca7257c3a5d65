import { compareIds } from './order';
import type { Collection, Home, Id } from './home';

/** The letter each collection's ids begin with; rounds are letters alone (a, b, c …). */
const LETTERS: Record<Exclude<Collection, 'rounds'>, string> = {
  levels: 'l',
  rooms: 'r',
  openings: 'o',
  fixtures: 'f',
  pieces: 'p',
  sources: 's',
  meters: 'g',
  walks: 'w',
  readings: 'm',
  recordings: 'b',
  comparisons: 'c',
  arrangements: 'v',
  guidelines: 'own-',
};

export const COLLECTIONS: readonly Collection[] = [
  'levels',
  'rooms',
  'openings',
  'fixtures',
  'pieces',
  'sources',
  'meters',
  'rounds',
  'walks',
  'readings',
  'recordings',
  'comparisons',
  'arrangements',
  'guidelines',
];

/** The name in `lastIds` under which rounds count: a is 1, z is 26, aa is 27. */
const ROUNDS = 'round';

/** A number this large or larger cannot be one that was given out; nine digits keep `lastIds` exact. */
const GIVEN = /^([a-z-]+)(0|[1-9]\d{0,8})$/;

/** What an id counts under and its number, or null for an id that this scheme never gives out. */
function counted(collection: Collection, id: Id): { letter: string; number: number } | null {
  if (collection === 'rounds')
    return /^[a-z]{1,4}$/.test(id) ? { letter: ROUNDS, number: roundNumber(id) } : null;
  const match = GIVEN.exec(id);
  return match ? { letter: match[1]!, number: Number(match[2]) } : null;
}

function roundNumber(id: Id): number {
  return [...id].reduce((sum, letter) => sum * 26 + letter.charCodeAt(0) - 96, 0);
}

function roundId(number: number): Id {
  let rest = number;
  let id = '';
  while (rest > 0) {
    id = String.fromCharCode(97 + ((rest - 1) % 26)) + id;
    rest = Math.floor((rest - 1) / 26);
  }
  return id;
}

type Collections = Pick<Home, Collection>;

/** The highest number of each letter among the ids that are present. */
export function highestIds(home: Collections): Record<string, number> {
  const highest: Record<string, number> = {};
  for (const collection of COLLECTIONS)
    for (const id of Object.keys(home[collection])) {
      const part = counted(collection, id);
      if (part && part.number > (highest[part.letter] ?? 0)) highest[part.letter] = part.number;
    }
  return Object.fromEntries(Object.entries(highest).sort(([a], [b]) => compareIds(a, b)));
}

/**
 * Gives out the next id of a collection and notes it in `lastIds`, so that it is never given out again: m12 is reading
 * 12 on paper too. Changes the draft it is handed.
 */
export function newId(draft: Collections & Pick<Home, 'lastIds'>, collection: Collection): Id {
  const letter = collection === 'rounds' ? ROUNDS : LETTERS[collection];
  let number = draft.lastIds[letter] ?? 0;
  let id: Id;
  do {
    number += 1;
    id = collection === 'rounds' ? roundId(number) : `${letter}${number}`;
  } while (COLLECTIONS.some((name) => Object.hasOwn(draft[name], id)));
  draft.lastIds[letter] = number;
  return id;
}
