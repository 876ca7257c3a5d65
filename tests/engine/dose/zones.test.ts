import { expect, test } from 'vitest';
import { area, bounds, contains } from '../../../src/engine/geometry/polygon';
import { zoneOf } from '../../../src/engine/dose/zones';

const at = { at: [10, 20] as const, angle: 0 };

test('in the middle of a bed: 0.6 m over the whole mattress', () => {
  const { ring } = zoneOf('bed', at, [1.4, 2], 'middle');
  expect(bounds(ring)).toEqual({ x0: 9.7, x1: 10.3, y0: 19, y1: 21 });
});

test('the left of someone lying face up with the head up the page is +x', () => {
  expect(bounds(zoneOf('bed', at, [1.4, 2], 'left').ring)).toEqual({ x0: 10, x1: 10.7, y0: 19, y1: 21 });
  expect(bounds(zoneOf('bed', at, [1.4, 2], 'right').ring)).toEqual({ x0: 9.3, x1: 10, y0: 19, y1: 21 });
});

test('a sleeper in a cot narrower than a body takes all of it', () => {
  const box = bounds(zoneOf('cot', at, [0.5, 1.2], 'middle').ring);
  expect([box.x0, box.x1]).toEqual([9.75, 10.25]);
});

test('a sitter takes 0.6 m before the foot side of the desk', () => {
  const box = bounds(zoneOf('desk', { ...at, angle: 90 }, [1.2, 0.6], 'middle').ring);
  expect(box.x0).toBeCloseTo(10.3);
  expect(box.x1).toBeCloseTo(10.9);
  expect(box.y0).toBeCloseTo(19.7);
});

test('cells lie inside, are alike, and fill the zone', () => {
  const { ring, cells } = zoneOf('bed', { ...at, angle: 33 }, [1.4, 2], 'left');
  expect(cells).toHaveLength(4 * 10);
  expect(cells.every((cell) => contains(ring, cell))).toBe(true);
  const middle = [0, 1].map((axis) => cells.reduce((sum, cell) => sum + cell[axis], 0) / cells.length);
  const corner = [0, 1].map((axis) => ring.reduce((sum, p) => sum + p[axis], 0) / 4);
  expect(middle[0]).toBeCloseTo(corner[0], 10);
  expect(middle[1]).toBeCloseTo(corner[1], 10);
  expect(area(ring)).toBeCloseTo(1.4, 10);
});
