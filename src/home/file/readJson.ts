import { LIMITS } from '../limits';
import { jsonFault } from './jsonFault';
import type { FileProblem } from '../problem';

/** Characters shown around a fault. */
const NEAR = 30;

function lineOf(text: string, at: number): { line: number; column: number } {
  const before = text.slice(0, at).split('\n');
  return { line: before.length, column: before.at(-1)!.length + 1 };
}

const byteLength = (text: string): number =>
  text.length * 3 <= LIMITS.file ? text.length : new TextEncoder().encode(text).length;

/** A picture, archive or other binary file read as text shows itself by control and replacement characters. */
function looksBinary(text: string): boolean {
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
  try {
    return { ok: true, value: JSON.parse(body) };
  } catch {
    if (looksBinary(body))
      return { ok: false, problem: { kind: 'file-binary', picture: looksLikePicture(body) } };
    const at = jsonFault(body);
    const place = lineOf(body, at);
    if (body.slice(at).trim() === '' || !/[}\]]$/.test(body))
      return {
        ok: false,
        problem: { kind: 'file-cut-short', line: lineOf(body, body.length).line, after: body.slice(-NEAR) },
      };
    const near = body.slice(Math.max(0, at - NEAR), at + NEAR);
    return { ok: false, problem: { kind: 'file-not-json', ...place, near } };
  }
}
