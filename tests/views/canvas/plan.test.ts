import { describe, expect, test } from 'vitest';
import { area, contains, containsEvenOdd, signedArea } from '../../../src/engine/geometry/polygon';
import { distance, type Ring } from '../../../src/engine/geometry/point';
import { newHome } from '../../../src/home/newHome';
import type { Opening, Piece, Room } from '../../../src/home/home';
import { openingLines, openingPlace } from '../../../src/views/canvas/drawing/openingLines';
import { letterPlace, pieceLines } from '../../../src/views/canvas/drawing/pieceLines';
import { INNER, OUTER, wallArea, wallDepth } from '../../../src/views/canvas/drawing/wallArea';
import { planGeometry } from '../../../src/views/canvas/planGeometry';

const room = (
  id: string,
  x0: number,
  y0: number,
  x1: number,
  y1: number,
  use: Room['use'] = 'living',
): Room => ({
  id,
  level: 'l1',
  name: id,
  use,
  outline: [
    [x0, y0],
    [x1, y0],
    [x1, y1],
    [x0, y1],
  ],
});
const door: Opening = {
  id: 'o1',
  room: 'r1',
  kind: 'door',
  wall: 0,
  offset: 1,
  width: 0.8,
  hinge: 'start',
  swing: 'in',
};
/** Area of rings read even-odd: holes are clockwise. */
const surface = (rings: Ring[]) => rings.reduce((sum, ring) => sum + signedArea(ring), 0);

describe('walls', () => {
  test('stand outside a single room, with square corners', () => {
    const walls = wallArea([room('r1', 0, 0, 4, 3)], []);
    expect(surface(walls)).toBeCloseTo((4 + 2 * OUTER) * (3 + 2 * OUTER) - 12, 3);
    expect(containsEvenOdd(walls, [-0.2, -0.2])).toBe(true);
    expect(containsEvenOdd(walls, [2, 1.5])).toBe(false);
  });

  test('are the same for either winding of an outline', () => {
    const turned = room('r1', 0, 0, 4, 3);
    turned.outline.reverse();
    expect(surface(wallArea([turned], []))).toBeCloseTo(surface(wallArea([room('r1', 0, 0, 4, 3)], [])), 6);
  });

  test('between two rooms that touch lie on the line they share', () => {
    const walls = wallArea([room('r1', 0, 0, 4, 3), room('r2', 4, 0, 7, 3)], []);
    for (const x of [4 - INNER / 2 + 0.005, 4, 4 + INNER / 2 - 0.005])
      expect(containsEvenOdd(walls, [x, 1.5])).toBe(true);
    expect(containsEvenOdd(walls, [4 + INNER / 2 + 0.01, 1.5])).toBe(false);
    expect(containsEvenOdd(walls, [7.1, 1.5])).toBe(true);
  });

  test('fill the gap between two rooms drawn to their inner faces', () => {
    const walls = wallArea([room('r1', 0, 0, 4, 3), room('r2', 4.15, 0, 7, 3)], []);
    expect(containsEvenOdd(walls, [4.01, 1.5])).toBe(true);
    expect(containsEvenOdd(walls, [4.14, 1.5])).toBe(true);
    expect(containsEvenOdd(walls, [3.97, 1.5])).toBe(false);
  });

  test('do not stand round grounds', () => {
    const walls = wallArea([room('r1', 0, 0, 4, 3), room('r2', 0, -4, 4, 0, 'grounds')], []);
    expect(containsEvenOdd(walls, [2, -4.1])).toBe(false);
    expect(containsEvenOdd(walls, [2, -0.1])).toBe(true);
  });

  test('are cut through by openings, outer and inner', () => {
    const rooms = [room('r1', 0, 0, 4, 3), room('r2', 4, 0, 7, 3)];
    const walls = wallArea(rooms, [door, { ...door, id: 'o2', wall: 1 }]);
    for (const y of [-0.21, -0.1, -0.01]) expect(containsEvenOdd(walls, [1.4, y])).toBe(false);
    expect(containsEvenOdd(walls, [0.95, -0.1])).toBe(true);
    expect(containsEvenOdd(walls, [4, 1.4])).toBe(false);
    expect(containsEvenOdd(walls, [4, 0.9])).toBe(true);
  });
});

describe('openings', () => {
  test.each(['in', 'out'] as const)('a door that opens %s sweeps a quarter circle on that side', (swing) => {
    const home = room('r1', 0, 0, 4, 3);
    const [arc, leaf] = openingLines({ ...door, swing }, openingPlace(door, home)!, OUTER);
    const [hinge, tip] = leaf!.points;
    expect(hinge).toEqual([1, 0]);
    expect(distance(hinge!, tip!)).toBeCloseTo(0.8, 9);
    expect(contains(home.outline, tip!)).toBe(swing === 'in');
    for (const p of arc!.points) expect(distance(hinge!, p)).toBeCloseTo(0.8, 9);
    expect(arc!.points[0]).toEqual([1.8, 0]);
  });

  test('a window fills the depth of its wall', () => {
    const home = room('r1', 0, 0, 4, 3);
    const place = openingPlace(door, home)!;
    expect(wallDepth(place, home, [home])).toEqual({ inner: false, depth: OUTER });
    const [box] = openingLines({ ...door, kind: 'window' }, place, OUTER);
    expect(area(box!.points)).toBeCloseTo(0.8 * OUTER, 9);
  });

  test('one on a wall that is not there draws nothing', () => {
    expect(openingPlace({ ...door, wall: 9 }, room('r1', 0, 0, 4, 3))).toBeNull();
  });
});

describe('furniture', () => {
  const bed: Piece = {
    id: 'p1',
    kind: 'bed',
    name: 'Bed',
    level: 'l1',
    at: [2, 2],
    angle: 90,
    size: [1.4, 2],
    height: 0.6,
    uses: [
      { who: 'A', side: 'left', hours: 8 },
      { who: 'B', side: 'right', hours: 8 },
    ],
    locked: false,
    mayStandIn: null,
    access: { left: 0.75, right: 0, foot: 0.75 },
  };

  test('a bed for two has two pillows and a dashed line where the zones meet; a bed for one has neither', () => {
    const two = pieceLines(bed);
    expect(two.filter((line) => line.dash)).toHaveLength(1);
    expect(two.filter((line) => line.closed)).toHaveLength(3);
    const one = pieceLines({ ...bed, size: [0.9, 2], uses: [{ who: 'A', side: 'middle', hours: 8 }] });
    expect(one.filter((line) => line.dash)).toHaveLength(0);
    expect(one.filter((line) => line.closed)).toHaveLength(2);
  });

  test.each(['bed', 'cot', 'seat', 'other'] as const)(
    'every stroke of a %s lies on its footprint',
    (kind) => {
      const [outline, ...inner] = pieceLines({ ...bed, kind, angle: 30 });
      for (const { points } of inner) {
        for (const p of points) {
          const toMiddle: [number, number] = [p[0] + (2 - p[0]) * 1e-6, p[1] + (2 - p[1]) * 1e-6];
          expect(contains(outline!.points, toMiddle)).toBe(true);
        }
      }
    },
  );

  test('the letter stands towards the foot, turned with the bed', () => {
    // At 90° the head points to −x, so the foot is at +x.
    const [x, y] = letterPlace(bed);
    expect(x).toBeGreaterThan(2.3);
    expect(y).toBeCloseTo(2, 9);
  });
});

test('the plan of a level holds that level alone', () => {
  const home = newHome();
  home.rooms = { r1: room('r1', 0, 0, 4, 3), r2: { ...room('r2', 10, 0, 14, 3), level: 'l2' } };
  home.openings = { o1: door };
  const plan = planGeometry(home, 'l1');
  expect(plan.isFloor(2, 1)).toBe(true);
  expect(plan.isFloor(12, 1)).toBe(false);
  expect(plan.isWall(0.5, -0.1)).toBe(true);
  expect(plan.isWall(1.4, -0.1)).toBe(false);
  expect(plan.openings).toHaveLength(2);
});
