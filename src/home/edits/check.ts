import * as z from 'zod/mini';
import { fileNames, memberNames } from '../file/names';
import { fieldProblems } from '../file/problems';
import { memberProblems } from '../integrity';
import { homeFile, MEMBERS, PARTS } from '../schema';
import type { Collection, Home, Id } from '../home';
import type { Path, Problem } from '../problem';

type Checked = { ok: true; fields: object } | { ok: false; problem: Problem };

/** Fields of one member by the rules of the file: with defaults filled in, or the first thing wrong with them. */
export function checkFields(collection: Collection, id: Id, fields: object): Checked {
  const checked = MEMBERS[collection].safeParse(fields);
  if (checked.success) return { ok: true, fields: checked.data };
  const problems = fieldProblems(fields, checked.error.issues, memberNames(collection), [collection, id]);
  return { ok: false, problem: problems[0]! };
}

const same = (a: unknown, b: unknown): boolean => JSON.stringify(a) === JSON.stringify(b);

/** Fields that stay the same are left alone, so that an edit which changes nothing leaves no trace in the history. */
function assign(holder: object, names: readonly string[], values: object): void {
  const [to, from] = [holder as Record<string, unknown>, values as Record<string, unknown>];
  for (const name of names) if (!same(to[name], from[name])) to[name] = from[name];
}

/** Puts new fields into a member of the draft where the rules allow them; a field that is undefined is left alone. */
export function put(draft: Home, collection: Collection, id: Id, fields: object): Problem | null {
  const member = draft[collection][id]! as object as Record<string, unknown>;
  const changed = Object.fromEntries(
    Object.entries(fields).filter(([name, value]) => value !== undefined && value !== member[name]),
  );
  const checked = PARTS[collection].safeParse(changed);
  if (!checked.success)
    return fieldProblems(changed, checked.error.issues, memberNames(collection), [collection, id])[0]!;
  assign(member, Object.keys(changed), checked.data);
  return memberProblems(draft, collection, id)[0] ?? null;
}

/** The same for what a home has once: its title and north, its settings, the words of its report. */
export function putPart(draft: Home, part: 'settings' | 'report' | null, fields: object): Problem | null {
  const path: Path = part ? [part] : [];
  const holder = part ? draft[part] : draft;
  const schema = part ? homeFile.shape[part] : z.pick(homeFile, { title: true, north: true });
  const whole = part ? { ...holder, ...fields } : { title: draft.title, north: draft.north, ...fields };
  const checked = schema.safeParse(whole);
  if (!checked.success)
    return fieldProblems(whole, checked.error.issues, (inside) => fileNames([...path, ...inside]), path)[0]!;
  assign(holder, Object.keys(fields), checked.data);
  return null;
}
