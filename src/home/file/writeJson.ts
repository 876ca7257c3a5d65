/** Longest line of a member that is written on one line. */
const WIDTH = 110;

/** Objects and lists nearer to the root than this are always opened: the file and its collections. */
const OPEN = 2;

function oneLine(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map(oneLine).join(', ')}]`;
  if (typeof value === 'object' && value !== null) {
    const fields = Object.entries(value).map(([name, field]) => `${JSON.stringify(name)}: ${oneLine(field)}`);
    return fields.length > 0 ? `{ ${fields.join(', ')} }` : '{}';
  }
  return JSON.stringify(value);
}

const holdsObject = (value: unknown): boolean =>
  Array.isArray(value) ? value.some(holdsObject) : typeof value === 'object' && value !== null;

function write(value: unknown, depth: number): string {
  const list = Array.isArray(value);
  if (typeof value !== 'object' || value === null || (list && !holdsObject(value))) return oneLine(value);
  if (depth >= OPEN) {
    const line = oneLine(value);
    if (line.length + 2 * depth <= WIDTH) return line;
  }
  const inside = '  '.repeat(depth + 1);
  const parts = list
    ? value.map((item) => inside + write(item, depth + 1))
    : Object.entries(value).map(
        ([name, field]) => `${inside}${JSON.stringify(name)}: ${write(field, depth + 1)}`,
      );
  const [open, close] = list ? '[]' : '{}';
  return parts.length > 0
    ? `${open}\n${parts.join(',\n')}\n${'  '.repeat(depth)}${close}`
    : `${open}${close}`;
}

/** JSON that people can read and compare: two spaces, one line for whatever fits, points never broken over lines. */
export function writeJson(value: unknown): string {
  return `${write(value, 0)}\n`;
}
