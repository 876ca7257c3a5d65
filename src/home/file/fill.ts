import { highestIds, newId, COLLECTIONS } from '../ids';
import { hoursAt, openingDefaults, pieceDefaults, sourceDefaults } from '../kindDefaults';
import { newHome } from '../newHome';
import { firstOf } from '../order';
import type { Collection, Home, Id } from '../home';
import type { HomeFile } from '../schema';

type Kept<T> = T & { id: Id };

/** Lists become records by id; whatever came without an id gets the next one, after all that have one. */
function collect(
  file: HomeFile,
): { [C in Collection]: Record<Id, Kept<HomeFile[C][number]>> } & Pick<Home, 'lastIds'> {
  const records = Object.fromEntries(COLLECTIONS.map((name) => [name, {}])) as ReturnType<typeof collect>;
  for (const name of COLLECTIONS)
    for (const member of file[name])
      if (member.id !== undefined) (records[name] as Record<Id, unknown>)[member.id] = member;
  records.lastIds = {};
  const present = records as unknown as Home;
  const highest = highestIds(present);
  const letters = new Set([...Object.keys(file.lastIds), ...Object.keys(highest)]);
  for (const letter of letters)
    records.lastIds[letter] = Math.max(file.lastIds[letter] ?? 0, highest[letter] ?? 0);
  for (const name of COLLECTIONS)
    for (const member of file[name])
      if (member.id === undefined) {
        const id = newId(present, name);
        (records[name] as Record<Id, unknown>)[id] = { ...member, id };
      }
  return records;
}

const mapRecord = <A, B>(record: Record<Id, A>, each: (member: A) => B): Record<Id, B> =>
  Object.fromEntries(Object.entries(record).map(([id, member]) => [id, each(member)]));

/** The home in memory from a file whose fields are right: ids, references that were left out, and defaults by kind. */
export function fillHome(file: HomeFile): Home {
  const blank = newHome();
  const records = collect(file);
  if (file.levels.length === 0) {
    const id = newId(records as unknown as Home, 'levels');
    records.levels[id] = { ...blank.levels.l1!, id, backdrop: null };
  }
  if (file.rounds.length === 0) {
    const id = newId(records as unknown as Home, 'rounds');
    records.rounds[id] = { ...blank.rounds.a!, id };
  }
  // “The first” of a file is the one listed first; in memory it is the first in natural order. Where the two differ
  // the reference is written out, so that nothing changes its meaning when the file is saved again.
  const listedFirst = <C extends 'levels' | 'rounds' | 'meters'>(name: C): Id | null =>
    Object.keys(records[name])[0] ?? null;
  const spelled = (name: 'rounds' | 'meters'): Id | null => {
    const first = file[name][0]?.id ?? null;
    return first === firstOf<{ id: Id }>(records[name])?.id ? null : first;
  };
  const level = file.levels[0]?.id ?? listedFirst('levels')!;
  const onLevel = <T extends { level?: Id | undefined }>(thing: T): T & { level: Id } => ({
    ...thing,
    level: thing.level ?? level,
  });
  const meter = spelled('meters');
  const round = spelled('rounds');

  return {
    title: file.title,
    north: file.north,
    settings: file.settings,
    levels: records.levels,
    rooms: mapRecord(records.rooms, onLevel),
    openings: mapRecord(records.openings, (o) => {
      const own = openingDefaults(o.kind);
      return { ...o, width: o.width ?? own.width, swing: o.swing ?? own.swing };
    }),
    fixtures: mapRecord(records.fixtures, onLevel),
    pieces: mapRecord(records.pieces, (p) => {
      const own = pieceDefaults(p.kind, p.size);
      return {
        ...onLevel(p),
        size: p.size ?? own.size,
        height: p.height ?? own.height,
        uses: p.uses?.map((use) => ({ ...use, hours: use.hours ?? hoursAt(p.kind) })) ?? own.uses,
        access: p.access ?? own.access,
      };
    }),
    sources: mapRecord(records.sources, (s) => ({
      ...onLevel(s),
      height: s.height ?? sourceDefaults(s.kind).height,
    })),
    meters: records.meters,
    rounds: records.rounds,
    walks: mapRecord(records.walks, onLevel),
    readings: mapRecord(records.readings, (r) => ({
      ...onLevel(r),
      meter: r.meter ?? meter,
      round: r.round ?? round,
    })),
    recordings: mapRecord(records.recordings, (r) => ({ ...onLevel(r), meter: r.meter ?? meter })),
    comparisons: records.comparisons,
    arrangements: mapRecord(records.arrangements, (a) => ({ ...a, pieces: a.pieces.map(onLevel) })),
    guidelines: records.guidelines,
    report: file.report,
    lastIds: records.lastIds,
  };
}
