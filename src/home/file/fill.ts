import { COMPLETE } from '../complete';
import { COLLECTIONS, highestIds, newId } from '../ids';
import { newHome } from '../newHome';
import { firstOf } from '../order';
import type { Collection, Home, Id } from '../home';
import type { HomeFile } from '../schema';

type Members = Record<Collection, Record<Id, unknown>>;

/**
 * The home in memory from a file whose fields are right. Lists become records by id; whatever came without an id gets
 * the next one after all that have one; a home without level or round gets the first of a new home.
 */
export function fillHome(file: HomeFile): Home {
  const blank = newHome();
  const home: Home = {
    ...blank,
    title: file.title,
    north: file.north,
    settings: file.settings,
    report: file.report,
    levels: {},
    rounds: {},
    lastIds: {},
  };
  const lists = {
    ...file,
    levels: file.levels.length > 0 ? file.levels : [{ ...blank.levels.l1!, id: undefined }],
    rounds: file.rounds.length > 0 ? file.rounds : [{ ...blank.rounds.a!, id: undefined }],
  };

  // Every id that is there must be known before the first one is given out.
  for (const name of COLLECTIONS)
    for (const member of lists[name])
      if (member.id !== undefined) (home as Members)[name][member.id] = member;
  const present = highestIds(home);
  for (const letter of [...Object.keys(present), ...Object.keys(file.lastIds)])
    home.lastIds[letter] = Math.max(present[letter] ?? 0, file.lastIds[letter] ?? 0);

  const firstListed: Partial<Record<Collection, Id>> = {};
  for (const name of COLLECTIONS) {
    for (const member of lists[name]) {
      const id = member.id ?? newId(home, name);
      firstListed[name] ??= id;
      const complete = COMPLETE[name] as (member: unknown, level: Id) => unknown;
      (home as Members)[name][id] = complete({ ...member, id }, firstListed.levels!);
    }
  }
  nameFirst(home, firstListed);
  return home;
}

/**
 * “The first” round or meter of a file is the one listed first; in memory, which knows no lists, it is the first in
 * natural order. Where the two differ the references that were left out are written out, so that none changes its meaning.
 */
function nameFirst(home: Home, listed: Partial<Record<Collection, Id>>): void {
  const differs = (name: 'rounds' | 'meters'): Id | null => {
    const first = firstOf<{ id: Id }>(home[name]);
    return first === null || first.id === listed[name] ? null : listed[name]!;
  };
  const [round, meter] = [differs('rounds'), differs('meters')];
  for (const reading of Object.values(home.readings)) {
    reading.round ??= round;
    reading.meter ??= meter;
  }
  for (const recording of Object.values(home.recordings)) recording.meter ??= meter;
}
