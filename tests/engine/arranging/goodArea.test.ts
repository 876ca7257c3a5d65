import { describe, expect, test } from 'vitest';
import { bed, box, desk, door, fitted, readingsOf, request, room } from './homes';
import { brokenRules } from '../../../src/engine/arranging/brokenRules';
import { containsEvenOdd } from '../../../src/engine/geometry/polygon';
import { doseAt } from '../../../src/engine/arranging/answer';
import { fieldsOf } from '../../../src/engine/dose/fieldAt';
import { goodArea } from '../../../src/engine/arranging/goodArea';
import { groundsOf } from '../../../src/engine/arranging/plan';
import { zoneMeans } from '../../../src/engine/dose/zoneMeans';

const home = request({
  fitted: fitted(readingsOf((x, y) => 0.03 + 0.3 / (1 + x + 0.3 * y) ** 2, [0, 0, 9, 4], 0.8)),
  rooms: [room('r1', box(0, 0, 4, 4)), room('r2', box(4.1, 0, 8.4, 4))],
  openings: [door('r1', 0, 1), door('r2', 0, 1)],
  pieces: [bed({ at: [1, 2.9] }), desk({ at: [7, 3.7] })],
});
const fieldAt = fieldsOf(home.fitted);
const ground = groundsOf(home, fieldAt);

const LOOSE = [
  'head-off-wall',
  'back-off-wall',
  'head-across-door',
  'head-under-window',
  'no-way',
  'no-escape',
];

describe.each([0, 90, 30])('the good area of a bed turned by %i degrees', (angle) => {
  const put = { id: 'bed', level: 'l1', at: [1, 2.9] as const, angle };
  const area = goodArea(home, ground, put);
  const places = area.rooms.flatMap(({ grid, dose }) =>
    [...dose].map((value, k) => ({
      at: [
        grid.x0 + ((k % grid.nx) + 0.5) * grid.step,
        grid.y0 + (Math.floor(k / grid.nx) + 0.5) * grid.step,
      ] as const,
      value,
    })),
  );

  test('a dose stands where the rules of room and pieces let the bed stand, and nowhere else', () => {
    for (const { at, value } of places.filter((_, k) => k % 29 === 0)) {
      const rules = brokenRules(home)({ ...put, at }).filter(({ kind }) => !LOOSE.includes(kind));
      expect(Number.isNaN(value), `${at}`).toBe(rules.length > 0);
    }
  });

  test('the dose is that of the place, nearly', () => {
    for (const { at, value } of places
      .filter(({ value: dose }) => !Number.isNaN(dose))
      .filter((_, k) => k % 41 === 0)) {
      const { dose } = doseAt(zoneMeans(fieldAt), home.pieces[0], { level: 'l1', at, angle });
      expect(value / dose).toBeGreaterThan(0.97);
      expect(value / dose).toBeLessThan(1.03);
    }
  });

  test('the outline holds the places within a twentieth of the least', () => {
    const rings = area.good.flatMap(({ rings }) => rings);
    expect(area.least).toBe(Math.min(...places.map(({ value }) => (Number.isNaN(value) ? Infinity : value))));
    for (const { at, value } of places) {
      if (value <= area.least! * 1.045) expect(containsEvenOdd(rings, at), `${at}`).toBe(true);
      if (Number.isNaN(value) || value > area.least! * 1.055) expect(containsEvenOdd(rings, at)).toBe(false);
    }
  });
});

test('a bed that fits nowhere has no good area', () => {
  const tiny = { ...home, rooms: [room('r1', box(0, 0, 1.5, 1.5))], openings: [] };
  const put = { id: 'bed', level: 'l1', at: [0.7, 0.7] as const, angle: 0 };
  expect(goodArea(tiny, groundsOf(tiny, fieldAt), put)).toMatchObject({ least: null, good: [] });
});
