import { LIMITS } from '../limits';
import type { FileProblem } from '../problem';

/** Characters shown around a fault. */
const NEAR = 30;

function lineOf(text: string, at: number): { line: number; column: number } {
  const before = text.slice(0, at).split('\n');
  return { line: before.length, column: before.at(-1)!.length + 1 };
}

/** Where the JSON broke, from the sentence of the JavaScript engine; engines differ, and some do not say. */
function faultPlace(message: string, text: string): { at: number; line: number; column: number } | null {
  const position = /position (\d+)/.exec(message);
  if (position) return { at: Number(position[1]), ...lineOf(text, Number(position[1])) };
  const place = /line (\d+) column (\d+)/.exec(message);
  if (!place) return null;
  const [line, column] = [Number(place[1]), Number(place[2])];
  const at = text
    .split('\n')
    .slice(0, line - 1)
    .reduce((sum, row) => sum + row.length + 1, column - 1);
  return { at, line, column };
}

const byteLength = (text: string): number =>
  text.length * 3 <= LIMITS.file ? text.length : new TextEncoder().encode(text).length;

/** A picture, archive or other binary file read as text shows itself by control and replacement characters. */
function looksBinary(text: string): boolean {
  // eslint would rather not see control characters in a pattern; here they are what is looked for
  return [...text.slice(0, 400)].some((c) => c === '\uFFFD' || (c < ' ' && !'\t\n\r\f'.includes(c)));
}

const looksLikePicture = (text: string): boolean =>
  /^(.PNG|GIF8|RIFF.{4}WEBP|\uFFFD{1,4}.{0,6}(JFIF|Exif))/s.test(text);

/** The JSON of a text, or why there is none. */
export function readJson(text: string): { ok: true; value: unknown } | { ok: false; problem: FileProblem } {
  const bytes = byteLength(text);
  if (bytes > LIMITS.file)
    return { ok: false, problem: { kind: 'file-too-large', bytes, limit: LIMITS.file } };
  const body = text.replace(/^\uFEFF/, '').trim();
  if (body === '') return { ok: false, problem: { kind: 'file-empty' } };
  if (looksBinary(body))
    return { ok: false, problem: { kind: 'file-binary', picture: looksLikePicture(body) } };
  try {
    return { ok: true, value: JSON.parse(body) };
  } catch (error) {
    if (body.startsWith('{') && !body.endsWith('}'))
      return {
        ok: false,
        problem: { kind: 'file-cut-short', line: body.split('\n').length, after: body.slice(-NEAR) },
      };
    const place = faultPlace(error instanceof Error ? error.message : '', body);
    return {
      ok: false,
      problem: {
        kind: 'file-not-json',
        line: place?.line ?? null,
        column: place?.column ?? null,
        near: place ? body.slice(Math.max(0, place.at - NEAR), place.at + NEAR) : body.slice(0, NEAR),
      },
    };
  }
}
