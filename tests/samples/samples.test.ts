import { describe, expect, it } from 'vitest';
import { readFileSync } from 'node:fs';
import { contains, selfCrossing } from '../../src/engine/geometry/polygon';
import { distance } from '../../src/engine/geometry/point';
import { parseHome } from '../../src/home/file/parse';
import { sampleFiles } from '../../samples/make';
import { serialiseHome } from '../../src/home/file/serialise';
import type { Home } from '../../src/home/home';

const files = sampleFiles();
const saved = (name: string) => readFileSync(new URL(`../../samples/${name}`, import.meta.url), 'utf8');

function parsed(text: string): Home {
  const result = parseHome(text);
  if (!result.ok) throw new Error(JSON.stringify(result.problems));
  return result.home;
}

describe.each(files)('$name', ({ name, text }) => {
  const home = parsed(text);
  const readings = Object.values(home.readings);

  it('is what the script makes again, to the byte', () => {
    expect(saved(name)).toBe(text);
    expect(serialiseHome(home)).toBe(text);
  });

  it('says that it is invented, in its title, its purpose and the note of every round', () => {
    expect(home.title).toMatch(/invented/);
    expect(home.report.purpose).toMatch(/Invented/);
    for (const { note } of Object.values(home.rounds)) expect(note).toMatch(/Invented.*seed \d+/);
  });

  it('has readings as homes have them, each with what its display showed', () => {
    for (const { value, text: written } of readings) {
      expect(value).toBeGreaterThanOrEqual(0.02);
      expect(value).toBeLessThanOrEqual(2);
      const [number, unit] = written.split(' ');
      expect(Number(number) * { µT: 1, mG: 0.1, nT: 0.001 }[unit]!).toBeCloseTo(value, 9);
    }
  });

  it('has every reading in a room or garden, and every piece in one room', () => {
    const rooms = Object.values(home.rooms);
    for (const { outline } of rooms) expect(selfCrossing(outline)).toBeNull();
    for (const { id, at } of readings)
      expect(
        rooms.some(({ outline }) => contains(outline, at)),
        id,
      ).toBe(true);
    for (const { at } of Object.values(home.pieces)) {
      expect(rooms.filter(({ outline, use }) => use !== 'grounds' && contains(outline, at))).toHaveLength(1);
    }
  });

  it('has openings that fit their walls', () => {
    for (const { room, wall, offset, width } of Object.values(home.openings)) {
      const { outline } = home.rooms[room];
      expect(offset + width).toBeLessThanOrEqual(
        distance(outline[wall], outline[(wall + 1) % outline.length]),
      );
    }
  });
});

it('there are a house with two rounds and a walk, a flat, and a bedroom in twelve readings', () => {
  const [house, flat, bedroom] = files.map(({ text }) => parsed(text));
  expect(Object.values(house.rounds).map(({ kind }) => kind)).toEqual(['asFound', 'supplyOff']);
  expect(Object.keys(house.walks)).toHaveLength(1);
  expect(Object.values(house.sources).map(({ kind }) => kind)).toEqual(['line', 'point']);
  // Nothing tells of the current in the flat's wall but its field.
  expect(Object.keys(flat.sources)).toHaveLength(0);
  expect(Object.keys(bedroom.readings)).toHaveLength(12);
});
