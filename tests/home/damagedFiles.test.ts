import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parseHome } from '../../src/home/file/parse';
import { problemText } from '../../src/words/problems';

const whole = readFileSync(new URL('fixtures/every-field.home.json', import.meta.url), 'utf8');

/** The sentences a text is refused with. */
function refusal(text: string): string[] {
  const result = parseHome(text);
  return result.ok ? [] : result.problems.map(problemText);
}

type Json = { [key: string]: Json } & Json[];

/** The whole file with one thing changed in it. */
function damaged(change: (file: Json) => void): string {
  const file = JSON.parse(whole) as Json;
  change(file);
  return JSON.stringify(file);
}

const set = (holder: unknown, key: string | number, value: unknown) => {
  (holder as Record<string | number, unknown>)[key] = value;
};

describe('a text that is no home file', () => {
  it.each([
    ['', 'The file is empty.'],
    ['  \n', 'The file is empty.'],
    ['[1, 2]', 'This is not a home file: its "format" is missing'],
    ['"stillroom-home"', 'This is not a home file'],
    ['null', 'This is not a home file'],
    ['{"format": "other-plan", "version": 1}', 'its "format" is "other-plan" and should be "stillroom-home"'],
    ['{"format": "stillroom-home"}', 'The file\'s "version" is missing'],
    ['{"format": "stillroom-home", "version": "1"}', 'The file\'s "version" is "1"'],
    ['{"format": "stillroom-home", "version": 1.5}', 'The file\'s "version" is 1.5'],
    ['{"format": "stillroom-home", "version": -1}', 'The file\'s "version" is -1'],
    ['{"format": "stillroom-home",\n "version": 1,\n "title": oops}', 'line 3'],
    ['{"format": "stillroom-home", "version": 1, "title": "x",}', 'cannot be read as JSON'],
  ])('%j is refused', (text, sentence) => {
    const sentences = refusal(text);
    expect(sentences).toHaveLength(1);
    expect(sentences[0]).toContain(sentence);
  });

  it('a newer version is called newer before any of its fields is looked at', () => {
    const sentences = refusal(
      '{"format": "stillroom-home", "version": 2, "rooms": "not even a list", "hologram": 1}',
    );
    expect(sentences).toHaveLength(1);
    expect(sentences[0]).toContain('newer Stillroom: it has version 2');
    expect(sentences[0]).toContain('reads up to version 1');
  });

  it('a file of 21 MB says its size and the limit', () => {
    const sentences = refusal(
      `{"format": "stillroom-home", "version": 1, "title": "${'x'.repeat(21 * 1024 * 1024)}"}`,
    );
    expect(sentences).toEqual([
      'The file has 21 MB; a home file has at most 20 MB. Take out background pictures or long recordings and try again.',
    ]);
  });

  it('a file whose letters take more than a byte counts bytes', () => {
    expect(refusal(`{"title": "${'µ'.repeat(11 * 1024 * 1024)}"}`)[0]).toContain('The file has 22 MB');
  });

  it('a picture named .json is called a picture', () => {
    const png = Buffer.from(
      '89504e470d0a1a0a0000000d49484452000000010000000108060000001f15c489',
      'hex',
    ).toString('utf8');
    const jpeg = Buffer.from('ffd8ffe000104a46494600010100000100010000', 'hex').toString('utf8');
    for (const picture of [png, jpeg])
      expect(refusal(picture)[0]).toMatch(/^This is a picture, not a home file\./);
    const archive = Buffer.from('504b03040a0000000000', 'hex').toString('utf8');
    expect(refusal(archive)[0]).toMatch(
      /^This is not a text file, not a home file\.|^This is not a text file/,
    );
  });

  it('a file cut anywhere is refused in one sentence that says where it ends', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: whole.trimEnd().length - 1 }), (length) => {
        const cut = whole.slice(0, length);
        const sentences = refusal(cut);
        expect(sentences).toHaveLength(1);
        expect(sentences[0]).toMatch(/ends in the middle, on line \d+/);
      }),
    );
  });
});

describe('fields of the file', () => {
  it.each<[string, (file: Json) => void, string[]]>([
    [
      'an unknown field',
      (f) => set(f.readings[0], 'hieght', 2),
      ['readings[0].hieght (m1)', 'it holds 2', 'Was “height” meant?', 'take it out'],
    ],
    ['an unknown field at the root', (f) => set(f, 'dragons', 3), ['dragons', 'Take it out']],
    [
      'an unknown field in the settings',
      (f) => set(f.settings, 'Target', 3),
      ['settings.Target', 'Was “target” meant?'],
    ],
    [
      'a field called __proto__',
      (f) => Object.defineProperty(f.rooms[0], '__proto__', { value: 1, enumerable: true }),
      ['rooms[0].__proto__', 'Take it out'],
    ],
    [
      'no title',
      (f) => delete (f as Record<string, unknown>).title,
      ['title is missing', 'Add text in quotes'],
    ],
    [
      'no outline',
      (f) => delete (f.rooms[1] as Record<string, unknown>).outline,
      ['rooms[1].outline (r2) is missing', 'Add a list'],
    ],
    [
      'text for a number',
      (f) => set(f.readings[0], 'value', '0.14'),
      ['readings[0].value (m1) is "0.14"', 'Write a number'],
    ],
    ['a number for text', (f) => set(f, 'title', 7), ['title is 7', 'Write text in quotes']],
    ['a list for an object', (f) => set(f, 'settings', []), ['settings is []', 'an object in { }']],
    ['an object for a list', (f) => set(f, 'rooms', {}), ['rooms is {}', 'a list in [ ]']],
    [
      'null for a number',
      (f) => set(f.pieces[0], 'angle', null),
      ['pieces[0].angle (p1) is null', 'Write a number'],
    ],
    [
      'a point of three',
      (f) => set(f.readings[0], 'at', [1, 2, 3]),
      ['readings[0].at (m1) is [1, 2, 3]', 'at most 2 entries'],
    ],
    [
      'a word for a place',
      (f) => set(f.readings[0].at, 1, 'here'),
      ['readings[0].at[1] (m1) is "here"', 'Write a number'],
    ],
    [
      'a value below zero',
      (f) => set(f.readings[0], 'value', -0.1),
      ['readings[0].value (m1) is -0.1', 'Write 0 or more'],
    ],
    [
      'a use nobody knows',
      (f) => set(f.rooms[0], 'use', 'ballroom'),
      ['rooms[0].use (r1) is "ballroom"', 'one of "sleeping", "living"'],
    ],
    [
      'a fall-off of 4',
      (f) => set(f.sources[0], 'falloff', 4),
      ['sources[0].falloff (s1) is 4', 'one of 1, 2, 3, "fit"'],
    ],
    [
      'a place a kilometre off',
      (f) => set(f.readings[0], 'at', [1001, 0]),
      ['readings[0].at[0] (m1) is 1001', 'at most 1000'],
    ],
    [
      'too long a text',
      (f) => set(f.report, 'advice', 'x'.repeat(2001)),
      ['report.advice', '…', 'at most 2000 characters'],
    ],
    [
      'too many corners',
      (f) =>
        set(
          f.rooms[0],
          'outline',
          Array.from({ length: 101 }, (_, i) => [i, i * i]),
        ),
      ['rooms[0].outline (r1)', 'at most 100 entries'],
    ],
    [
      'an id with capitals',
      (f) => set(f.rooms[0], 'id', 'Room 1'),
      ['rooms[0].id', 'is "Room 1"', 'an id of small letters'],
    ],
    [
      'a date that is none',
      (f) => set(f.report, 'date', '2. March'),
      ['report.date is "2. March"', 'a date like'],
    ],
    [
      'a time that is none',
      (f) => set(f.readings[0], 'time', 'yesterday'),
      ['readings[0].time (m1) is "yesterday"', 'a time like'],
    ],
    [
      'a day that the calendar does not have',
      (f) => set(f.report, 'date', '2026-02-31'),
      ['report.date is "2026-02-31"', 'a date like'],
    ],
    [
      'the 29th of February of another year',
      (f) => set(f.readings[0], 'time', '2026-02-29T19:40'),
      ['readings[0].time (m1) is "2026-02-29T19:40"', 'a time like'],
    ],
    [
      'a night that is none',
      (f) => set(f.settings, 'night', ['25:00', '07:00']),
      ['settings.night[0] is "25:00"', 'a time of day'],
    ],
    [
      'a picture from elsewhere',
      (f) => set(f.levels[0].backdrop, 'image', 'https://example.org/plan.png'),
      ['levels[0].backdrop.image (l1)', 'a PNG, JPEG, WebP or GIF picture'],
    ],
    [
      'half a wall number',
      (f) => set(f.openings[0], 'wall', 0.5),
      ['openings[0].wall (o1) is 0.5', 'Write a whole number'],
    ],
    [
      'yes for true',
      (f) => set(f.pieces[0], 'locked', 'yes'),
      ['pieces[0].locked (p1) is "yes"', 'true or false'],
    ],
  ])('%s: path, value and the way out', (_, change, parts) => {
    const sentences = refusal(damaged(change));
    expect(sentences).toHaveLength(1);
    for (const part of parts) expect(sentences[0]).toContain(part);
  });

  it('an infinite number is refused', () => {
    expect(refusal(whole.replace('"value": 0.14', '"value": 1e999'))[0]).toContain('readings[0].value (m1)');
  });

  it('names every problem, and counts those after the twentieth', () => {
    const readings = Array.from({ length: 30 }, (_, i) => ({ id: `m${i + 1}`, at: [i, 0], value: -1 }));
    const sentences = refusal(JSON.stringify({ format: 'stillroom-home', version: 1, title: '', readings }));
    expect(sentences).toHaveLength(21);
    expect(sentences[19]).toContain('readings[19].value (m20) is -1');
    expect(sentences[20]).toBe('And 10 further problems. Mend those above and open the file again.');
  });

  it('whatever a field is exchanged for, there is a home or a sentence with its path, and never an exception', () => {
    const paths = (value: unknown, path: (string | number)[] = []): (string | number)[][] =>
      typeof value !== 'object' || value === null
        ? [path]
        : [
            path,
            ...Object.entries(value).flatMap(([key, inside]) =>
              paths(inside, [...path, Array.isArray(value) ? Number(key) : key]),
            ),
          ];
    const all = paths(JSON.parse(whole)).filter((path) => path.length > 0);
    const values = fc.oneof(
      fc.jsonValue({ maxDepth: 2 }),
      fc.constantFrom<unknown>(-1, 1e300, '', [], {}, null, true, 'constructor'),
    );
    fc.assert(
      fc.property(fc.constantFrom(...all), values, (path, value) => {
        const text = damaged((file) => {
          const holder = path
            .slice(0, -1)
            .reduce<unknown>((o, key) => (o as Record<string | number, unknown>)[key], file);
          set(holder, path.at(-1)!, value);
        });
        const sentences = refusal(text);
        for (const sentence of sentences) expect(sentence).toMatch(/^[A-Za-z“_].*\.( |$)/s);
      }),
      { numRuns: 400 },
    );
  });
});

describe('parts that do not fit together', () => {
  it.each<[string, (file: Json) => void, string[]]>([
    [
      'one id twice in a list',
      (f) => set(f.rooms[1], 'id', 'r1'),
      ['rooms[1].id is "r1"', 'rooms[0].id already has', 'Give one of the two another id'],
    ],
    ['one id in two lists', (f) => set(f.pieces[0], 'id', 'r1'), ['pieces[0].id is "r1"', 'rooms[0].id']],
    [
      'a level that is not there',
      (f) => set(f.rooms[0], 'level', 'l9'),
      ['Room r1: level is "l9"', 'no level of that id', '"l1", "l2"'],
    ],
    [
      'a room that is not there',
      (f) => set(f.openings[0], 'room', 'r9'),
      ['Opening o1: room is "r9"', 'no room of that id', '"r1", "r2", "r3"'],
    ],
    [
      'a room called constructor',
      (f) => set(f.openings[0], 'room', 'constructor'),
      ['Opening o1: room is "constructor"'],
    ],
    [
      'a meter that is not there',
      (f) => set(f.readings[0], 'meter', 'g9'),
      ['Reading m1: meter is "g9"', '"g1", "g2"'],
    ],
    [
      'a round that is not there',
      (f) => set(f.readings[0], 'round', 'z'),
      ['Reading m1: round is "z"', '"a", "b"'],
    ],
    ['a walk that is not there', (f) => set(f.readings[0], 'walk', 'w2'), ['Reading m1: walk is "w2"']],
    [
      'a guideline that is not there',
      (f) => set(f.settings, 'guideline', 'own-2'),
      ['settings.guideline is "own-2"', '"own-1"'],
    ],
    ['a base that is not there', (f) => set(f.settings, 'base', 'b2'), ['settings.base is "b2"', '"b1"']],
    [
      'a room a piece may stand in that is not there',
      (f) => set(f.pieces[0].mayStandIn, 0, 'r9'),
      ['Piece p1: mayStandIn[0] is "r9"'],
    ],
    [
      'a piece of an arrangement that is not there',
      (f) => set(f.arrangements[0].pieces[0], 'id', 'p2'),
      ['Arrangement v1: pieces[0].id is "p2"'],
    ],
    [
      'a source of an arrangement that is not there',
      (f) => set(f.arrangements[0].sources[0], 'id', 's9'),
      ['Arrangement v1: sources[0].id is "s9"'],
    ],
    [
      'two corners',
      (f) =>
        set(f.rooms[1], 'outline', [
          [0, 0],
          [4, 0],
        ]),
      ['Room r2: outline has 2 corners', 'at least 3'],
    ],
    [
      'an outline that crosses itself',
      (f) =>
        set(f.rooms[1], 'outline', [
          [0, 0],
          [4, 3],
          [4, 0],
          [0, 3],
        ]),
      ['Room r2: outline crosses itself: wall 0 meets wall 2 at 2, 1.5', 'Move a corner'],
    ],
    [
      'a wall that is not there',
      (f) => set(f.openings[0], 'wall', 4),
      ['Opening o1: wall is wall 4', 'walls 0 to 3'],
    ],
    ['a front that is not there', (f) => set(f.fixtures[0], 'front', 7), ['Fixture f1: front is wall 7']],
    [
      'a door wider than its wall',
      (f) => set(f.openings[0], 'width', 3.2),
      ['Opening o1: width is 3.2 m', 'its wall of 3 m', 'narrower'],
    ],
    [
      'a door beyond its wall',
      (f) => set(f.openings[0], 'offset', 2.5),
      [
        'Opening o1: offset is 2.5 m',
        'would end at 3.26 m',
        'beyond its wall of 3 m',
        'Write 2.24 m or less',
      ],
    ],
    [
      'a point with a path',
      (f) =>
        set(f.sources[1], 'path', [
          [0, 0],
          [1, 1],
        ]),
      ['Source s2: path has 2 points', 'It needs 1'],
    ],
    [
      'a line of one point',
      (f) => set(f.sources[0], 'path', [[0, 0]]),
      ['Source s1: path has 1 point', '2 or more'],
    ],
    ['a walk that goes nowhere', (f) => set(f.walks[0], 'path', []), ['Walk w1: path has 0 points']],
    [
      'a lowest above the highest',
      (f) => set(f.readings[0], 'min', 0.2),
      ['Reading m1: min: the lowest, 0.2, is above the highest, 0.16'],
    ],
    [
      'edges out of order',
      (f) => set(f.guidelines[0].edges[0], 'value', 0.2),
      ['Guideline own-1: edges: entry 1'],
    ],
    [
      'samples out of order',
      (f) => set(f.recordings[0].samples[0], 0, 90),
      ['Recording b1: samples: entry 1'],
    ],
    [
      'a meter compared with itself',
      (f) => set(f.comparisons[0], 'reference', 'g1'),
      ['Comparison c1 compares a meter with itself'],
    ],
    [
      '2,001 readings',
      (f) =>
        set(
          f,
          'readings',
          Array.from({ length: 2001 }, () => ({ at: [0, 0], value: 1 })),
        ),
      ['readings: 2001 readings', 'at most 2000'],
    ],
    [
      '11 levels',
      (f) =>
        set(
          f,
          'levels',
          Array.from({ length: 11 }, (_, i) => ({ id: `l${i + 1}` })),
        ),
      ['levels: 11 levels', 'at most 10'],
    ],
    [
      '200,001 samples',
      (f) =>
        set(
          f.recordings[0],
          'samples',
          Array.from({ length: 200_001 }, (_, i) => [i, 0]),
        ),
      ['samples: 200001 samples', 'at most 200000'],
    ],
    [
      'a picture over 1 MB',
      (f) => set(f.levels[0].backdrop, 'image', `data:image/png;base64,${'A'.repeat(1.5 * 1024 * 1024)}`),
      ['Level l1: backdrop.image has 1.1 MB', 'at most 1 MB'],
    ],
  ])('%s: where, what, and the way out', (_, change, parts) => {
    const sentences = refusal(damaged(change));
    expect(sentences).toHaveLength(1);
    for (const part of parts) expect(sentences[0]).toContain(part);
  });

  it('as many things as a home may hold are taken', () => {
    const many = damaged((f) => {
      set(f, 'pieces', [...f.pieces, ...Array.from({ length: 499 }, () => ({ kind: 'seat' }))]);
      set(
        f.recordings[0],
        'samples',
        Array.from({ length: 200_000 }, (_, i) => [i, 0]),
      );
    });
    expect(refusal(many)).toEqual([]);
  });
});
