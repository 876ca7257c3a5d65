import { accessOf, hoursAt, openingDefaults, pieceDefaults, sourceDefaults } from './kindDefaults';
import type * as z from 'zod/mini';
import type { Collection, Home, Id } from './home';
import type { MEMBERS } from './schema';

/** A member as the schema leaves it, with its id. */
export type Checked<C extends Collection> = z.output<(typeof MEMBERS)[C]> & { id: Id };

type Member<C extends Collection> = Home[C][Id];

const onLevel = <T extends { level?: Id | undefined }>(thing: T, level: Id): T & { level: Id } => ({
  ...thing,
  level: thing.level ?? level,
});

/** Fills in what depends on the kind, and the level where none is named. */
export const COMPLETE: { [C in Collection]: (member: Checked<C>, level: Id) => Member<C> } = {
  levels: (member) => member,
  rooms: onLevel,
  openings: (member) => {
    const own = openingDefaults(member.kind);
    return { ...member, width: member.width ?? own.width, swing: member.swing ?? own.swing };
  },
  fixtures: onLevel,
  pieces: (member, level) => {
    const own = pieceDefaults(member.kind, member.size);
    const size = member.size ?? own.size;
    return {
      ...onLevel(member, level),
      size,
      height: member.height ?? own.height,
      uses: member.uses?.map((use) => ({ ...use, hours: use.hours ?? hoursAt(member.kind) })) ?? own.uses,
      access: member.access ?? accessOf(member.kind, size, member.uses),
    };
  },
  sources: (member, level) => ({
    ...onLevel(member, level),
    height: member.height ?? sourceDefaults(member.kind).height,
  }),
  meters: (member) => member,
  rounds: (member) => member,
  walks: onLevel,
  readings: onLevel,
  recordings: onLevel,
  comparisons: (member) => member,
  arrangements: (member, level) => ({
    ...member,
    pieces: member.pieces.map((piece) => onLevel(piece, level)),
  }),
  guidelines: (member) => member,
};
