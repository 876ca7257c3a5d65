import { COLLECTION_NAMES, countOf, nameOf } from './collections';
import { faultSentence, ruleSentence } from './arranging';
import { methodName } from './assessment';
import { quantitySentence } from './quantities';
import type { Expected, Path, Problem } from '../home/problem';

/** A path as it is written in the file: `rooms[2].outline[0]`. */
export function pathText(path: Path): string {
  return path.map((key, i) => (typeof key === 'number' ? `[${key}]` : i === 0 ? key : `.${key}`)).join('');
}

/** A value as it stands in the file, cut where it is long or deep. */
function valueText(value: unknown, depth = 3): string {
  const cut = (text: string) => (text.length > 60 ? `${text.slice(0, 57)}…` : text);
  if (typeof value !== 'object' || value === null) return cut(JSON.stringify(value) ?? String(value));
  const [open, close] = Array.isArray(value) ? '[]' : '{}';
  if (depth === 0) return `${open}…${close}`;
  const parts = Object.entries(value)
    .slice(0, 20)
    .map(([key, inside]) => (Array.isArray(value) ? '' : `"${key}": `) + valueText(inside, depth - 1));
  return cut(`${open}${parts.join(', ')}${close}`);
}

const quoted = (text: string): string => `“${text.length > 60 ? `${text.slice(0, 57)}…` : text}”`;
const number = (value: number): string => String(Number(value.toPrecision(6))).replace('-', '−');
const metres = (value: number): string => `${number(Number(value.toFixed(2)))} m`;
const megabytes = (bytes: number): string => `${number(Number((bytes / 1024 / 1024).toFixed(1)))} MB`;
const count = (n: number, one: string, many = `${one}s`): string => `${number(n)} ${n === 1 ? one : many}`;

/** A path into the home in memory, the thing first: `Room r3: outline`. A path into the file stays one. */
function where(path: Path): string {
  const [collection, id, ...rest] = path;
  if (typeof collection !== 'string' || typeof id !== 'string' || !(collection in COLLECTION_NAMES))
    return pathText(path);
  const name = nameOf(collection);
  const thing = `${name[0]!.toUpperCase()}${name.slice(1)} ${id}`;
  return rest.length > 0 ? `${thing}: ${pathText(rest)}` : thing;
}

function place(path: Path, id: string | null): string {
  const text = where(path) || 'the file';
  return id !== null && !path.includes(id) ? `${text} (${id})` : text;
}

const FORMATS = {
  id: 'an id of small letters, digits and hyphens, at most 24, like "m12"',
  date: 'a date like "2026-03-02", or null',
  time: 'a time like "2026-03-02T19:40:00+01:00"',
  clock: 'a time of day like "22:00"',
  picture: 'a PNG, JPEG, WebP or GIF picture as a data address',
  letters: 'small letters',
} as const;

const UNITS = { number: '', text: ' characters', list: ' entries' } as const;

function wanted(expected: Expected): string {
  switch (expected.is) {
    case 'type':
      return {
        number: 'a number',
        'whole number': 'a whole number',
        text: 'text in quotes',
        'yes or no': 'true or false',
        list: 'a list in [ ]',
        object: 'an object in { }',
      }[expected.type];
    case 'one of':
      return expected.values.length === 1
        ? valueText(expected.values[0])
        : `one of ${expected.values.map((value) => valueText(value)).join(', ')}`;
    case 'least':
      return expected.inclusive
        ? `${number(expected.limit)}${UNITS[expected.of]} or more`
        : `more than ${number(expected.limit)}${UNITS[expected.of]}`;
    case 'most':
      return `${expected.inclusive ? 'at most' : 'less than'} ${number(expected.limit)}${UNITS[expected.of]}`;
    case 'format':
      return FORMATS[expected.format];
  }
}

type Sentences = { [K in Problem['kind']]: (problem: Extract<Problem, { kind: K }>) => string };

const SENTENCES: Sentences = {
  'file-too-large': (p) =>
    `The file has ${megabytes(p.bytes)}; a home file has at most ${megabytes(p.limit)}. Take out background pictures or long recordings and try again.`,
  'file-empty': () => 'The file is empty. Choose a file that ends in .home.json and was saved completely.',
  'file-binary': (p) =>
    `${p.picture ? 'This is a picture, not a home file' : 'This is not a text file, and so no home file'}. Choose a file that ends in .home.json${p.picture ? '; a picture of a plan is put under a level as its backdrop' : ''}.`,
  'file-cut-short': (p) =>
    `The file ends in the middle, on line ${p.line}, after ${quoted(p.after.replace(/\s+/g, ' '))}. It was not saved or copied completely: take an earlier copy, or copy it again.`,
  'file-not-json': (p) =>
    `The file cannot be read as JSON: line ${p.line}, column ${p.column}, near ${quoted(p.near.replace(/\s+/g, ' '))}. Mend that place in a text editor, or take an earlier copy.`,
  'file-foreign': (p) =>
    `This is not a home file: its "format" is ${p.format === null ? 'missing' : valueText(p.format)} and should be "stillroom-home". Choose a file that ends in .home.json.`,
  'file-newer': (p) =>
    `The file was written by a newer Stillroom: it has version ${number(p.version)}, and this one reads up to version ${p.known}. Open it with the newer Stillroom, or load this page again to get the newest.`,
  'file-version': (p) =>
    `The file's "version" is ${p.version === null ? 'missing' : valueText(p.version)}; it should be a whole number up to ${p.known}. Write "version": ${p.known}, or take an earlier copy.`,
  'field-missing': (p) => `${place(p.path, p.id)} is missing. Add ${wanted(p.expected)}.`,
  'field-unknown': (p) =>
    `${place(p.path, p.id)} is a field this version does not know; it holds ${valueText(p.value)}. ${p.nearest ? `Was “${p.nearest}” meant? Rename it, or take it out.` : 'Take it out.'}`,
  'field-wrong': (p) => `${place(p.path, p.id)} is ${valueText(p.value)}. Write ${wanted(p.expected)}.`,
  'more-problems': (p) =>
    `And ${count(p.count, 'further problem')}. Mend those above and open the file again.`,
  'id-twice': (p) =>
    `${where(p.path)} is ${valueText(p.id)}, which ${where(p.first)} already has. Give one of the two another id, and change what refers to it.`,
  'points-nowhere': (p) =>
    `${where(p.path)} is ${valueText(p.id)}, and there is no ${nameOf(p.wanted)} of that id. ${
      p.have.length > 0
        ? `Write one of ${p.have
            .slice(0, 8)
            .map((value) => valueText(value))
            .join(', ')}${p.have.length > 8 ? ' …' : ''}`
        : `Add the ${nameOf(p.wanted)}`
    }, or take the reference out.`,
  'too-many': (p) => {
    const counted = countOf(String(p.path.at(-1)), p.count);
    return `${where(p.path)}: ${counted}; a home holds at most ${number(p.limit)}. Take some out, or start a second home.`;
  },
  'outline-short': (p) =>
    `${where(p.path)} has ${count(p.corners, 'corner')}. An outline needs at least ${p.least}: add corners, or take it out.`,
  'outline-crosses': (p) =>
    `${where(p.path)} crosses itself: wall ${p.first} meets wall ${p.second} at ${number(Number(p.at[0].toFixed(2)))}, ${number(Number(p.at[1].toFixed(2)))}. Move a corner so that the walls go round once.`,
  'outline-flat': (p) => `${where(p.path)} encloses no floor. Move its corners apart.`,
  'path-corners': (p) =>
    `${where(p.path)} has ${count(p.points, 'point')}. It needs ${p.least === p.most ? p.least : p.most === Infinity ? `${p.least} or more` : `${p.least} to ${p.most}`}: add or take out points.`,
  'no-such-wall': (p) =>
    p.walls === 0
      ? `${where(p.path)} is wall ${p.wall}, but the outline has no walls yet. Give it at least 3 corners.`
      : `${where(p.path)} is wall ${p.wall}, but the outline has walls 0 to ${p.walls - 1}. Write one of these.`,
  'wider-than-wall': (p) =>
    `${where(p.path)} is ${metres(p.width)}, wider than its wall of ${metres(p.wallLength)}. Make the opening narrower, or put it in another wall.`,
  'beyond-wall': (p) =>
    `${where(p.path)} is ${metres(p.offset)}: the opening of ${metres(p.width)} would end at ${metres(p.offset + p.width)}, beyond its wall of ${metres(p.wallLength)}. Write ${metres(Math.max(0, p.wallLength - p.width))} or less.`,
  'low-above-high': (p) =>
    `${where(p.path)}: the lowest, ${number(p.low)}, is above the highest, ${number(p.high)}. Exchange the two, or mend one.`,
  'out-of-order': (p) =>
    `${where(p.path)}: entry ${p.index} comes before the one ahead of it. Put the entries in rising order.`,
  'picture-too-large': (p) =>
    `${where(p.path)} has ${megabytes(p.bytes)}; a picture has at most ${megabytes(p.limit)}. Save it smaller or as JPEG, and add it again.`,
  'compared-with-itself': (p) => `${where(p.path)} compares a meter with itself. Name two different meters.`,
  'not-there': (p) => `There is no ${nameOf(p.collection)} ${p.id} any more. Choose one from the list.`,
  'last-one': (p) =>
    `A home keeps at least one ${nameOf(p.collection)}, and this is the last. Add another first, or change this one.`,
  'no-corners': (p) => `${where(p.path)} has no corners of its own. Choose a room or a fixture.`,
  'no-such-corner': (p) => `${where(p.path)} has no corner ${p.corner}. Choose one of its corners.`,
  'field-not-changeable': (p) =>
    `${where(p.path)} stays as it is once given. Remove the thing and add it anew.`,
  'reading-not-copied': (p) =>
    `Reading ${p.id} is not copied: a reading is what the meter showed once. Take another one instead.`,
  'storage-full': () =>
    'The browser has no room left for this home. Keep a file of it now, then remove homes you no longer need, or free space on the device.',
  'storage-refused': (p) =>
    `The browser refused to store the home (${p.detail}). Keep a file of it now; a private window often stores nothing.`,
  'storage-absent': () =>
    'This browser keeps nothing here. Everything works until the page is closed: keep a file before that, and open it next time.',
  'storage-read-only': () =>
    'Another tab is writing this home, so this one only reads. Close the other tab, or take over writing here.',
  'home-missing': (p) =>
    `There is no home ${quoted(p.id)} in this browser any more. Open its file, or choose another home.`,
  'file-not-taken': (p) =>
    `${quoted(p.fileName)} was not taken. Drop a home file that ends in .home.json or, in sketch, a picture of a plan as PNG, JPEG, WebP or GIF of at most 1 MB.`,
  'file-unreadable': (p) =>
    `The file ${quoted(p.fileName)} could not be read (${p.detail}). Choose it again, or copy it to this device first.`,
  'file-bad': (p) =>
    `${quoted(p.fileName)} was not opened, and the home on screen stays as it was. ${p.problems.map(problemText).join(' ')}`,
  'quantity-empty': quantitySentence,
  'not-a-field': quantitySentence,
  'not-a-length': quantitySentence,
  'unknown-unit': quantitySentence,
  'unit-missing': quantitySentence,
  'comma-ambiguous': quantitySentence,
  'quantity-negative': quantitySentence,
  'length-zero': quantitySentence,
  'nothing-to-surround': () =>
    'There is nothing on this level to draw grounds around. Take a reading or draw a room first.',
  'no-wall-near': () => 'There is no wall here. Set the opening on a wall of a room.',
  'opening-too-wide': (p) =>
    `The opening is ${metres(p.width)} wide and this wall ${metres(p.wallLength)} long. Make the opening narrower, or choose a longer wall.`,
  'outline-too-small': () => 'This encloses no floor. Draw it larger, or type its width × length.',
  'only-a-line': () => 'This is only a line. Drag over its depth too, or press once for one of common size.',
  'scale-out-of-reach': (p) =>
    `Two points of a plan are not ${p.metres < p.least ? 'that close' : 'that far apart'}. Type their true distance, from ${number(p.least)} to ${number(p.most)} m.`,
  'no-backdrop': () => 'This level has no picture to scale. Add a photo or scan of the plan first.',
  'too-few-readings': (p) =>
    `A map needs at least ${p.need} readings, and this round has ${p.have}. Take ${count(p.need - p.have, 'more reading', 'more readings')} at other places.`,
  'work-failed': (p) =>
    `The calculation stopped (${p.detail}). Nothing in the home has changed: try it again, and keep a file if it happens once more.`,
  'work-cancelled': () =>
    'The calculation was cancelled. The last picture stays; start it again when you like.',
  'nothing-to-arrange': () =>
    'No piece can be moved: add a bed, a cot or a desk with hours of use, or unlock one of those that are drawn.',
  'no-map-to-arrange-on': () => 'There is no map to arrange on yet. Take at least three readings first.',
  'nothing-fits': (p) =>
    `No place inside the rules is large enough for ${p.pieces.join(', ')}. Ask for less free floor around it, let it stand in more rooms, or unlock another piece.`,
  'rules-broken': (p) =>
    `${p.piece || 'A piece'} cannot stand there any more. ${[...new Set(p.rules.map((rule) => ruleSentence(rule, rule.with)))].join(' ')} Work the arrangement out again.`,
  'places-faulty': (p) =>
    `A second look at the places does not agree with the planner. ${[...new Set(p.faults.map(faultSentence))].join(' ')} Nothing was moved: look at another answer, move the piece by hand, or work it out again.`,
  'map-without-sources': (p) =>
    `This map was drawn by ${methodName(p.method)}, which knows no sources. Choose source kriging or source sampling to try it.`,
  'proposal-stale': () => 'The home has changed since this proposal. Work it out again.',
};

/** The sentence a person reads: what is wrong, where, and what to do. */
export function problemText(problem: Problem): string {
  return (SENTENCES[problem.kind] as (problem: Problem) => string)(problem);
}
