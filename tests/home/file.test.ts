import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parseHome } from '../../src/home/file/parse';
import { serialiseHome } from '../../src/home/file/serialise';
import { integrity } from '../../src/home/integrity';
import { inOrder } from '../../src/home/order';
import { newHome } from '../../src/home/newHome';
import { addRoom } from '../../src/home/edits/add';
import { anyHome } from '../support/anyHome';
import { homeWith } from '../support/homes';
import type { Home } from '../../src/home/home';

const fixture = (name: string) => readFileSync(new URL(`fixtures/${name}`, import.meta.url), 'utf8');

function parsed(text: string): Home {
  const result = parseHome(text);
  if (!result.ok) throw new Error(JSON.stringify(result.problems));
  return result.home;
}

/** The least home file, with more lists. */
const file = (lists: object = {}) =>
  JSON.stringify({ format: 'stillroom-home', version: 1, title: 'Test', ...lists });

/** Every path to a leaf of a plain value. */
function leaves(value: unknown, path = ''): string[] {
  if (typeof value !== 'object' || value === null) return [path];
  return Object.entries(value).flatMap(([key, inside]) => leaves(inside, `${path}/${key}`));
}

describe('a home and its file', () => {
  it('reads back exactly what it wrote, for generated homes', () => {
    fc.assert(
      fc.property(anyHome, (home) => {
        expect(integrity(home)).toEqual([]);
        expect(parsed(serialiseHome(home))).toEqual(home);
      }),
      { numRuns: 150 },
    );
  });

  it('writes the same bytes after reading them, and whatever the order in memory', () => {
    fc.assert(
      fc.property(anyHome, (home) => {
        const text = serialiseHome(home);
        expect(serialiseHome(parsed(text))).toBe(text);
        const reversed = { ...home, readings: Object.fromEntries(Object.entries(home.readings).reverse()) };
        expect(serialiseHome(reversed)).toBe(text);
      }),
      { numRuns: 60 },
    );
  });

  it('keeps every field of the format', () => {
    const text = fixture('every-field.home.json');
    const written = JSON.parse(serialiseHome(parsed(text))) as Record<string, unknown>;
    const given = JSON.parse(text) as Record<string, unknown>;
    const kept = new Set(leaves(written));
    const omitted = leaves(given).filter((path) => !kept.has(path));
    // What is left out is at its default: read again, it is the same home.
    expect(parsed(JSON.stringify(written))).toEqual(parsed(text));
    for (const path of omitted) {
      const keys = path.slice(1).split('/');
      const changed = structuredClone(given);
      const holder = keys
        .slice(0, -1)
        .reduce<Record<string, unknown>>((o, key) => o[key] as Record<string, unknown>, changed);
      delete holder[keys.at(-1)!];
      expect(parsed(JSON.stringify(changed)), path).toEqual(parsed(text));
    }
    expect(Object.keys(written)).toEqual(Object.keys(given));
  });

  it('is laid out for people: members and points on lines of their own, never a point over lines', () => {
    const text = serialiseHome(parsed(fixture('every-field.home.json')));
    expect(text).toContain('"outline": [[0, 0], [4, 0], [4, 3], [0, 3]]');
    expect(text).toContain('\n    { "id": "o2", "room": "r1", "kind": "window"');
    expect(text.endsWith('}\n')).toBe(true);
    expect(text).not.toMatch(/\[\s*\n\s*-?\d/);
  });

  it('needs only what is marked as needed', () => {
    const home = parsed(
      file({
        rooms: [
          {
            outline: [
              [0, 0],
              [4, 0],
              [4, 3],
            ],
          },
        ],
        readings: [{ at: [1, 1], value: 0.1 }],
      }),
    );
    expect(home.levels).toEqual(newHome().levels);
    expect(home.rounds).toEqual(newHome().rounds);
    expect(home.rooms.r1).toMatchObject({ level: 'l1', use: 'living' });
    expect(home.readings.m1).toMatchObject({
      level: 'l1',
      height: 1,
      round: null,
      meter: null,
      excluded: '',
    });
    expect(home.lastIds).toEqual({ l: 1, r: 1, m: 1, round: 1 });
  });

  it('fills in what depends on the kind', () => {
    const { pieces, openings, sources } = parsed(
      file({
        rooms: [
          {
            id: 'r1',
            outline: [
              [0, 0],
              [4, 0],
              [4, 3],
            ],
          },
        ],
        pieces: [
          { kind: 'bed' },
          { kind: 'cot' },
          { kind: 'desk' },
          { kind: 'bed', uses: [{ side: 'left' }] },
        ],
        openings: [{ room: 'r1' }, { room: 'r1', kind: 'window' }],
        sources: [
          {
            path: [
              [0, 0],
              [1, 0],
            ],
          },
          { kind: 'point', path: [[0, 0]] },
        ],
      }),
    );
    expect(pieces.p1).toMatchObject({
      size: [1.4, 2],
      height: 0.6,
      uses: [{ who: 'A', side: 'middle', hours: 8 }],
    });
    expect(pieces.p2).toMatchObject({ size: [0.6, 1.2], height: 0.5, uses: [{ hours: 12 }] });
    expect(pieces.p3).toMatchObject({ size: [1.2, 0.6], height: 1, uses: [{ hours: 4 }] });
    expect(pieces.p4).toMatchObject({ uses: [{ who: 'A', side: 'left', hours: 8 }] });
    expect(openings.o1!.swing).toBe('in');
    expect(openings.o2!.swing).toBe('none');
    expect([sources.s1!.height, sources.s2!.height]).toEqual([8, 1]);
  });

  it('gives a thing without an id the next one after all that have one, and no lost number again', () => {
    const readings = [
      { at: [0, 0], value: 1 },
      { id: 'm7', at: [1, 0], value: 1 },
      { at: [2, 0], value: 1 },
    ];
    const home = parsed(file({ readings, lastIds: { m: 12 } }));
    expect(inOrder(home.readings).map(({ id, at }) => [id, at[0]])).toEqual([
      ['m7', 1],
      ['m13', 0],
      ['m14', 2],
    ]);
    expect(home.lastIds.m).toBe(14);
  });

  it('reads “the first” as the one listed first, and keeps that meaning when it writes in another order', () => {
    const home = parsed(
      file({
        rounds: [
          { id: 'b', name: 'Evening' },
          { id: 'a', name: 'Morning' },
        ],
        meters: [{ id: 'g1' }, { id: 'g2' }],
        readings: [{ id: 'm1', at: [0, 0], value: 1 }],
      }),
    );
    expect(home.readings.m1).toMatchObject({ round: 'b', meter: null });
    expect(parsed(serialiseHome(home)).readings.m1).toMatchObject({ round: 'b' });
  });

  it('takes any winding and does not turn it round', () => {
    const outline = [
      [0, 3],
      [4, 3],
      [4, 0],
      [0, 0],
    ];
    expect(parsed(file({ rooms: [{ outline }] })).rooms.r1!.outline).toEqual(outline);
  });

  it('does not mind a byte order mark', () => {
    expect(parsed(`\uFEFF${file()}`).title).toBe('Test');
  });

  it('brings a version 0 draft to the present version: milligauss become microtesla', () => {
    const home = parsed(fixture('version-0.home.json'));
    expect(home.readings.m1!.value).toBeCloseTo(0.14, 12);
    expect(home.readings.m1!.text).toBe('1.4 mG');
    expect(home.readings.m3!.value).toBeCloseTo(0.06, 12);
    expect((JSON.parse(serialiseHome(home)) as { version: number }).version).toBe(1);
  });

  it('reads the largest home there may be', () => {
    const readings = Array.from({ length: 2000 }, (_, i) => ({ at: [i / 10, 0], value: 0.1 }));
    expect(Object.keys(parsed(file({ readings })).readings)).toHaveLength(2000);
  });
});

it('a room called by the replacement character is not taken for a picture', () => {
  const home = homeWith(
    addRoom({
      name: '\uFFFD',
      outline: [
        [0, 0],
        [4, 0],
        [4, 3],
      ],
    }),
  );
  expect(parseHome(serialiseHome(home))).toEqual({ ok: true, home });
});
