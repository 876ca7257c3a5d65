import type * as z from 'zod/mini';
import type { Expected, FieldProblem, Format, Path } from '../problem';

type Issue = z.core.$ZodIssue;

const TYPES: Record<string, Extract<Expected, { is: 'type' }>['type']> = {
  number: 'number',
  int: 'whole number',
  string: 'text',
  boolean: 'yes or no',
  array: 'list',
  tuple: 'list',
  object: 'object',
  record: 'object',
};

const SIZED: Record<string, 'number' | 'text' | 'list'> = {
  number: 'number',
  int: 'number',
  string: 'text',
  array: 'list',
};

function expectedBy(issue: Issue): Expected {
  switch (issue.code) {
    case 'invalid_value':
      return { is: 'one of', values: issue.values as (string | number)[] };
    case 'too_small':
      return {
        is: 'least',
        of: SIZED[issue.origin] ?? 'list',
        limit: Number(issue.minimum),
        inclusive: issue.inclusive ?? true,
      };
    case 'too_big':
      return {
        is: 'most',
        of: SIZED[issue.origin] ?? 'list',
        limit: Number(issue.maximum),
        inclusive: issue.inclusive ?? true,
      };
    case 'invalid_format':
      return { is: 'format', format: issue.message as Format };
    case 'invalid_type':
      return { is: 'type', type: TYPES[issue.expected] ?? 'object' };
    default:
      return { is: 'type', type: 'object' };
  }
}

/** What stands at a path of a plain value; undefined where nothing does. */
function valueAt(root: unknown, path: Path): unknown {
  return path.reduce<unknown>(
    (value, key) =>
      typeof value === 'object' && value !== null && Object.hasOwn(value, key)
        ? (value as Record<string | number, unknown>)[key]
        : undefined,
    root,
  );
}

/** The id of the innermost thing on a path that has one. */
function idOn(root: unknown, path: Path): string | null {
  for (let n = path.length; n > 0; n -= 1) {
    const id = valueAt(root, [...path.slice(0, n), 'id']);
    if (typeof id === 'string' && n < path.length) return id;
  }
  return null;
}

/** The name a person most likely meant: the same letters but for case, or at most two letters apart. */
function nearestName(name: string, known: readonly string[]): string | null {
  const ranked = known
    .map((candidate) => ({ candidate, apart: lettersApart(name.toLowerCase(), candidate.toLowerCase()) }))
    .sort((a, b) => a.apart - b.apart);
  return ranked[0] && ranked[0].apart <= 2 ? ranked[0].candidate : null;
}

/** Levenshtein distance (1965): the fewest letters added, left out or changed. */
function lettersApart(a: string, b: string): number {
  let row = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i += 1) {
    const next = [i];
    for (let j = 1; j <= b.length; j += 1)
      next[j] = Math.min(next[j - 1]! + 1, row[j]! + 1, row[j - 1]! + (a[i - 1] === b[j - 1] ? 0 : 1));
    row = next;
  }
  return row[b.length]!;
}

/** The issues of the schema as problems, each with its path, value and what was expected. */
export function fieldProblems(
  root: unknown,
  issues: readonly Issue[],
  namesAt: (path: Path) => readonly string[],
  base: Path = [],
): FieldProblem[] {
  return issues.flatMap((issue): FieldProblem[] => {
    const path = issue.path as (string | number)[];
    if (issue.code === 'unrecognized_keys')
      return issue.keys.map((key) => ({
        kind: 'field-unknown',
        path: [...base, ...path, key],
        id: idOn(root, [...path, key]),
        value: valueAt(root, [...path, key]),
        nearest: nearestName(key.slice(0, 40), namesAt(path)),
      }));
    if (issue.code === 'invalid_key')
      return [
        {
          kind: 'field-wrong',
          path: [...base, ...path],
          id: null,
          value: path.at(-1),
          expected: { is: 'format', format: 'letters' },
        },
      ];
    const value = valueAt(root, path);
    const place = { path: [...base, ...path], id: idOn(root, path), expected: expectedBy(issue) };
    return [
      value === undefined ? { kind: 'field-missing', ...place } : { kind: 'field-wrong', value, ...place },
    ];
  });
}
