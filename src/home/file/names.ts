import * as z from 'zod/mini';
import { homeFile, MEMBERS } from '../schema';
import type { Collection } from '../home';
import type { Path } from '../problem';

/** The object schema inside defaults, nulls and lists. */
function inner(schema: z.core.$ZodType): z.core.$ZodType {
  if (
    schema instanceof z.ZodMiniDefault ||
    schema instanceof z.ZodMiniPrefault ||
    schema instanceof z.ZodMiniNullable ||
    schema instanceof z.ZodMiniOptional
  )
    return inner(schema.def.innerType);
  return schema;
}

/** The field names that an object may have, by its path inside a schema. */
function namesIn(root: z.core.$ZodType, path: Path): readonly string[] {
  let schema = inner(root);
  for (const key of path) {
    if (schema instanceof z.ZodMiniArray) schema = inner(schema.def.element);
    else if (schema instanceof z.ZodMiniObject) {
      const field = (schema.shape as Record<string, z.core.$ZodType>)[key];
      if (!field) return [];
      schema = inner(field);
    } else return [];
  }
  return schema instanceof z.ZodMiniObject ? Object.keys(schema.shape) : [];
}

export const fileNames = (path: Path): readonly string[] => namesIn(homeFile, path);

export const memberNames =
  (collection: Collection) =>
  (path: Path): readonly string[] =>
    namesIn(MEMBERS[collection], path);
