import * as z from 'zod/mini';
import { COLLECTIONS, highestIds } from '../ids';
import { inOrder } from '../order';
import { homeFile } from '../schema';
import { VERSION } from './migrations';
import { writeJson } from './writeJson';
import type { Home } from '../home';

/** Defaults are small; what they are compared with may be a picture or a day of samples. */
function isDefault(value: unknown, fallback: unknown): boolean {
  if (typeof fallback !== 'object' || fallback === null) return value === fallback;
  const sizeOf = (of: object) => Object.keys(of).length;
  if (typeof value !== 'object' || value === null || sizeOf(value) !== sizeOf(fallback)) return false;
  return JSON.stringify(value) === JSON.stringify(fallback);
}

/** A value with the fields of its schema in the schema's order; those that equal their default are left out. */
function plain(schema: z.core.$ZodType, value: unknown): unknown {
  if (
    schema instanceof z.ZodMiniDefault ||
    schema instanceof z.ZodMiniPrefault ||
    schema instanceof z.ZodMiniOptional ||
    schema instanceof z.ZodMiniNullable
  )
    return value === null ? null : plain(schema.def.innerType, value);
  if (schema instanceof z.ZodMiniArray)
    return (value as unknown[]).map((item) => plain(schema.def.element, item));
  if (!(schema instanceof z.ZodMiniObject)) return value;
  const fields: [string, unknown][] = [];
  for (const [name, field] of Object.entries(schema.shape as Record<string, z.core.$ZodType>)) {
    const inside = plain(field, (value as Record<string, unknown>)[name]);
    const fallback =
      field instanceof z.ZodMiniDefault
        ? field.def.defaultValue
        : field instanceof z.ZodMiniPrefault
          ? {}
          : undefined;
    if (!isDefault(inside, fallback)) fields.push([name, inside]);
  }
  return Object.fromEntries(fields);
}

/**
 * The text of a home file. The same home gives the same bytes: fields in the order of the format, members in the
 * natural order of their ids, defaults that do not depend on the kind left out.
 */
export function serialiseHome(home: Home): string {
  const present = highestIds(home);
  const lists = Object.fromEntries(COLLECTIONS.map((name) => [name, inOrder<{ id: string }>(home[name])]));
  const lastIds = Object.fromEntries(
    Object.entries(home.lastIds)
      .filter(([letter, number]) => number > (present[letter] ?? 0))
      .sort(([a], [b]) => (a < b ? -1 : 1)),
  );
  return writeJson(
    plain(homeFile, { format: 'stillroom-home', version: VERSION, ...home, ...lists, lastIds }),
  );
}
