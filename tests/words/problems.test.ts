import { describe, expect, it } from 'vitest';
import { pathText, problemText } from '../../src/words/problems';
import type { Problem } from '../../src/home/problem';

type Kind = Problem['kind'];
type Examples = { [K in Kind]: Extract<Problem, { kind: K }> };

const ROOM = ['rooms', 'r1', 'outline'];

/** One of every kind; the type sees to it that none is left out. */
const EXAMPLES: Examples = {
  'file-too-large': { kind: 'file-too-large', bytes: 22_020_096, limit: 20_971_520 },
  'file-empty': { kind: 'file-empty' },
  'file-binary': { kind: 'file-binary', picture: true },
  'file-cut-short': { kind: 'file-cut-short', line: 40, after: '"at": [1.2,' },
  'file-not-json': { kind: 'file-not-json', line: 3, column: 7, near: '"title": oops' },
  'file-foreign': { kind: 'file-foreign', format: 'other' },
  'file-newer': { kind: 'file-newer', version: 3, known: 1 },
  'file-version': { kind: 'file-version', version: 'one', known: 1 },
  'field-missing': {
    kind: 'field-missing',
    path: ['title'],
    id: null,
    expected: { is: 'type', type: 'text' },
  },
  'field-unknown': {
    kind: 'field-unknown',
    path: ['readings', 3, 'hieght'],
    id: 'm4',
    value: 1,
    nearest: 'height',
  },
  'field-wrong': {
    kind: 'field-wrong',
    path: ['readings', 3, 'value'],
    id: 'm4',
    value: -2,
    expected: { is: 'least', of: 'number', limit: 0, inclusive: true },
  },
  'more-problems': { kind: 'more-problems', count: 4 },
  'id-twice': { kind: 'id-twice', path: ['rooms', 2, 'id'], id: 'r1', first: ['rooms', 0, 'id'] },
  'points-nowhere': {
    kind: 'points-nowhere',
    path: ['readings', 'm1', 'meter'],
    id: 'g9',
    wanted: 'meters',
    have: [],
  },
  'too-many': { kind: 'too-many', path: ['rooms'], count: 201, limit: 200 },
  'outline-short': { kind: 'outline-short', path: ROOM, corners: 1, least: 3 },
  'outline-crosses': { kind: 'outline-crosses', path: ROOM, first: 0, second: 2, at: [1.234, 2] },
  'outline-flat': { kind: 'outline-flat', path: ROOM },
  'path-corners': {
    kind: 'path-corners',
    path: ['walks', 'w1', 'path'],
    points: 1,
    least: 2,
    most: Infinity,
  },
  'no-such-wall': { kind: 'no-such-wall', path: ['openings', 'o1', 'wall'], wall: 4, walls: 4 },
  'wider-than-wall': {
    kind: 'wider-than-wall',
    path: ['openings', 'o1', 'width'],
    width: 2,
    wallLength: 1.5,
  },
  'beyond-wall': {
    kind: 'beyond-wall',
    path: ['openings', 'o1', 'offset'],
    offset: 1,
    width: 0.8,
    wallLength: 1.5,
  },
  'low-above-high': { kind: 'low-above-high', path: ['readings', 'm1', 'min'], low: 2, high: 1 },
  'out-of-order': { kind: 'out-of-order', path: ['recordings', 'b1', 'samples'], index: 7 },
  'picture-too-large': {
    kind: 'picture-too-large',
    path: ['levels', 'l1', 'backdrop', 'image'],
    bytes: 2_097_152,
    limit: 1_048_576,
  },
  'compared-with-itself': { kind: 'compared-with-itself', path: ['comparisons', 'c1'] },
  'not-there': { kind: 'not-there', collection: 'rooms', id: 'r1' },
  'last-one': { kind: 'last-one', collection: 'levels' },
  'no-corners': { kind: 'no-corners', path: ['pieces', 'p1'] },
  'no-such-corner': { kind: 'no-such-corner', path: ROOM, corner: 9 },
  'field-not-changeable': { kind: 'field-not-changeable', path: ['rooms', 'r1', 'id'] },
  'reading-not-copied': { kind: 'reading-not-copied', id: 'm1' },
  'nothing-to-surround': { kind: 'nothing-to-surround' },
  'storage-full': { kind: 'storage-full' },
  'storage-refused': { kind: 'storage-refused', detail: 'private window' },
  'storage-absent': { kind: 'storage-absent' },
  'storage-read-only': { kind: 'storage-read-only' },
  'home-missing': { kind: 'home-missing', id: 'k3' },
  'file-not-taken': { kind: 'file-not-taken', fileName: 'notes.txt' },
  'file-unreadable': { kind: 'file-unreadable', fileName: 'x.home.json', detail: 'the card is gone' },
  'file-bad': { kind: 'file-bad', fileName: 'x.home.json', problems: [{ kind: 'file-empty' }] },
  'quantity-empty': { kind: 'quantity-empty', of: 'field' },
  'not-a-field': { kind: 'not-a-field', text: 'much' },
  'not-a-length': { kind: 'not-a-length', text: '4.2.1' },
  'unknown-unit': { kind: 'unknown-unit', of: 'length', text: '3 ell', unit: 'ell' },
  'unit-missing': { kind: 'unit-missing', text: '3' },
  'comma-ambiguous': { kind: 'comma-ambiguous', text: '1,250', point: '1.250', whole: '1250' },
  'quantity-negative': { kind: 'quantity-negative', of: 'field', text: '-1' },
  'length-zero': { kind: 'length-zero', text: '0' },
  'no-wall-near': { kind: 'no-wall-near' },
  'opening-too-wide': { kind: 'opening-too-wide', width: 1.2, wallLength: 0.9 },
  'outline-too-small': { kind: 'outline-too-small' },
  'only-a-line': { kind: 'only-a-line' },
  'scale-out-of-reach': { kind: 'scale-out-of-reach', metres: 1e9, least: 0.1, most: 200 },
  'no-backdrop': { kind: 'no-backdrop' },
  'too-few-readings': { kind: 'too-few-readings', have: 2, need: 3 },
  'work-failed': { kind: 'work-failed', detail: 'out of memory' },
  'work-cancelled': { kind: 'work-cancelled' },
  'nothing-to-arrange': { kind: 'nothing-to-arrange' },
  'no-map-to-arrange-on': { kind: 'no-map-to-arrange-on' },
  'nothing-fits': { kind: 'nothing-fits', pieces: ['p1', 'p2'] },
  'rules-broken': {
    kind: 'rules-broken',
    piece: 'Bed',
    rules: [
      { kind: 'overlap', with: 'Desk' },
      { kind: 'before-door', with: null },
    ],
  },
  'places-faulty': { kind: 'places-faulty', faults: [{ piece: 'Bed', room: 'Bedroom', rule: 'door' }] },
  'map-without-sources': { kind: 'map-without-sources', method: 'inverse-distance' },
  'proposal-stale': { kind: 'proposal-stale' },
};

describe('the sentence of every problem', () => {
  it.each(Object.values(EXAMPLES))('$kind says what is wrong and what to do', (problem) => {
    const text = problemText(problem);
    // What is wrong, and after it, or in the same breath, the way out.
    expect(text).toMatch(/^[A-Z“a-z].*\.$/s);
    expect(text.split(/[.:;] /).length).toBeGreaterThan(1);
    expect(text).not.toMatch(/undefined|null|NaN|Infinity|\[object/);
    expect(text).not.toMatch(/!|error|invalid|failed/i);
  });

  it('puts the place, the value and the way out in one', () => {
    expect(problemText(EXAMPLES['field-wrong'])).toBe('readings[3].value (m4) is -2. Write 0 or more.');
    expect(problemText(EXAMPLES['field-unknown'])).toBe(
      'readings[3].hieght (m4) is a field this version does not know; it holds 1. Was “height” meant? Rename it, or take it out.',
    );
    expect(problemText(EXAMPLES['outline-crosses'])).toBe(
      'Room r1: outline crosses itself: wall 0 meets wall 2 at 1.23, 2. Move a corner so that the walls go round once.',
    );
    expect(problemText(EXAMPLES['points-nowhere'])).toBe(
      'Reading m1: meter is "g9", and there is no meter of that id. Add the meter, or take the reference out.',
    );
    expect(problemText(EXAMPLES['beyond-wall'])).toBe(
      'Opening o1: offset is 1 m: the opening of 0.8 m would end at 1.8 m, beyond its wall of 1.5 m. Write 0.7 m or less.',
    );
    expect(problemText(EXAMPLES['too-few-readings'])).toBe(
      'A map needs at least 3 readings, and this round has 2. Take 1 more reading at other places.',
    );
  });

  it('of a bad file names the file, says that nothing was lost, and gives each problem', () => {
    expect(problemText(EXAMPLES['file-bad'])).toBe(
      '“x.home.json” was not opened, and the home on screen stays as it was. The file is empty. Choose a file that ends in .home.json and was saved completely.',
    );
  });

  it('cuts long and deep values short', () => {
    let deep: unknown = 1;
    for (let i = 0; i < 50_000; i += 1) deep = [deep];
    const of = (value: unknown) => problemText({ ...EXAMPLES['field-unknown'], value, nearest: null });
    expect(of(deep)).toContain('it holds [[[[…]]]].');
    expect(of('x'.repeat(9999)).length).toBeLessThan(200);
    expect(of({ a: [1, 'b'] })).toContain('it holds {"a": [1, "b"]}.');
  });

  it('writes paths as they are written in the file', () => {
    expect(pathText(['rooms', 2, 'outline', 0, 1])).toBe('rooms[2].outline[0][1]');
  });
});
