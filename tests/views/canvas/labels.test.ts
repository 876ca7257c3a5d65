import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { contains } from '../../../src/engine/geometry/polygon';
import type { Ring } from '../../../src/engine/geometry/point';
import { contourLabel } from '../../../src/views/canvas/drawing/contourLabels';
import {
  besideDot,
  boxesAlong,
  Crowd,
  inside,
  overlap,
  placeLabels,
  type Box,
} from '../../../src/views/canvas/drawing/labelPlaces';
import { layLabels } from '../../../src/views/canvas/labels';
import { namePlaces } from '../../../src/views/canvas/drawing/namePlaces';

const sheet: Box = { x: 0, y: 0, width: 400, height: 300 };

describe('labels', () => {
  test('never overprint one another and are never cut by the edge', () => {
    const dot = fc.tuple(fc.integer({ min: 0, max: 400 }), fc.integer({ min: 0, max: 300 }));
    fc.assert(
      fc.property(fc.array(dot, { minLength: 1, maxLength: 60 }), (dots) => {
        const crowd = new Crowd();
        const wishes = dots.map(([x, y], i) => ({ id: String(i), places: besideDot(x, y, 34, 13) }));
        const placed = [...placeLabels(wishes, crowd, sheet).values()];
        placed.forEach((a, i) => {
          expect(inside(a, sheet)).toBe(true);
          for (const b of placed.slice(i + 1)) expect(overlap(a, b)).toBe(false);
        });
      }),
    );
  });

  test('try right, left, above, below in that order', () => {
    const crowd = new Crowd();
    const [right, left, above, below] = besideDot(200, 150, 30, 12);
    const taken: Box[] = [];
    for (const expected of [right, left, above, below, undefined]) {
      for (const box of taken.splice(0)) crowd.add(box);
      const wish = { id: 'm1', places: besideDot(200, 150, 30, 12) };
      expect(placeLabels([wish], crowd, sheet).get('m1')).toEqual(expected);
    }
  });

  test('stand across a wall only where there is no other place', () => {
    const [right, left] = besideDot(200, 150, 30, 12);
    const wish = { id: 'm1', places: besideDot(200, 150, 30, 12) };
    const onRight = ({ x }: Box) => x > 200;
    expect(placeLabels([wish], new Crowd(), sheet, onRight).get('m1')).toEqual(left);
    expect(placeLabels([wish], new Crowd(), sheet, () => true).get('m1')).toEqual(right);
  });

  test('keep off every part of a path', () => {
    const crowd = new Crowd();
    for (const box of boxesAlong(
      [
        [0, 0],
        [300, 200],
      ],
      6,
    ))
      crowd.add(box);
    for (let t = 0; t <= 1; t += 0.01)
      expect(crowd.isFree({ x: 300 * t - 1, y: 200 * t - 1, width: 2, height: 2 })).toBe(false);
    expect(crowd.isFree({ x: 10, y: 190, width: 30, height: 12 })).toBe(true);
  });
});

describe('names of rooms', () => {
  const corner: Ring = [
    [0, 0],
    [6, 0],
    [6, 2],
    [2, 2],
    [2, 5],
    [0, 5],
  ];
  const toScreen = ([x, y]: readonly [number, number]) => [x * 40, 240 - y * 40] as const;
  const toPlan = (x: number, y: number) => [x / 40, (240 - y) / 40] as const;

  test('are offered wholly inside an L-shaped room only, nearest its deepest place first', () => {
    const places = [...namePlaces(corner, 60, 14, toScreen, toPlan)];
    expect(places.length).toBeGreaterThan(20);
    for (const { x, y, width, height } of places) {
      for (const [px, py] of [
        [x, y],
        [x + width, y],
        [x, y + height],
        [x + width, y + height],
      ] as const)
        expect(contains(corner, toPlan(px, py))).toBe(true);
    }
  });

  test('are not offered where the room is smaller than its name', () => {
    expect([...namePlaces(corner, 260, 14, toScreen, toPlan)]).toEqual([]);
  });
});

describe('names and values', () => {
  test('a value never stands so close to a name that the two read as one', () => {
    const outline: Ring = [
      [0, 0],
      [4, 0],
      [4, 3],
      [0, 3],
    ];
    const camera = { centre: [2, 1.5], scale: 60, width: 400, height: 300 } as const;
    let seen = 0;
    for (let x = 0.2; x < 4; x += 0.1) {
      const placed = layLabels({
        camera: { ...camera, centre: [2, 1.5] },
        signs: [],
        furniture: [],
        strokes: [],
        names: [{ id: 'r1', outline, width: 70, height: 15 }],
        sources: [],
        values: [{ id: 'm1', at: [x, 1.5], width: 24, height: 13 }],
        contours: [],
        picture: null,
        plan: { isFloor: () => true, isWall: () => false },
      });
      const [name, value] = [placed.names.get('r1')!, placed.values.get('m1')];
      if (!value) continue;
      seen += 1;
      const isLevel = value.y < name.y + name.height && name.y < value.y + value.height;
      const gap = Math.max(value.x - (name.x + name.width), name.x - (value.x + value.width));
      if (isLevel) expect(gap).toBeGreaterThanOrEqual(8);
    }
    expect(seen).toBeGreaterThan(20);
  });
});

describe('labels of contours', () => {
  const everywhere = () => true;
  const straight = Array.from({ length: 40 }, (_, i) => [10 + i * 8, 200 - i * 2] as const);

  test('lie along the line and read upright', () => {
    const label = contourLabel(straight, 24, 12, new Crowd(), sheet, everywhere)!;
    expect(label.angle).toBeCloseTo(Math.atan2(-2, 8), 6);
    const back = contourLabel(straight.toReversed(), 24, 12, new Crowd(), sheet, everywhere)!;
    expect(back.angle).toBeCloseTo(label.angle, 6);
  });

  test('are left out on a line that is too short or too bent', () => {
    expect(contourLabel(straight.slice(0, 4), 24, 12, new Crowd(), sheet, everywhere)).toBeNull();
    const ring = Array.from(
      { length: 30 },
      (_, i) => [200 + 12 * Math.cos(i / 4.6), 150 + 12 * Math.sin(i / 4.6)] as const,
    );
    expect(contourLabel(ring, 24, 12, new Crowd(), sheet, everywhere)).toBeNull();
  });

  test('keep to where the line is seen, and off each other', () => {
    const crowd = new Crowd();
    const onLeft = (x: number) => x < 160;
    const first = contourLabel(straight, 24, 12, crowd, sheet, onLeft)!;
    expect(first.x).toBeLessThan(160);
    const second = contourLabel(straight, 24, 12, crowd, sheet, onLeft);
    if (second) expect(Math.hypot(second.x - first.x, second.y - first.y)).toBeGreaterThan(24);
    expect(contourLabel(straight, 24, 12, crowd, sheet, () => false)).toBeNull();
  });
});
