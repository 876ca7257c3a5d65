import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { insideDistance } from '../../src/engine/geometry/polygon';
import { distanceToPath } from '../../src/engine/geometry/segment';
import { toPlan } from '../../src/engine/geometry/pose';
import { zoneOf } from '../../src/engine/dose/zones';
import { KINDS, thingOf } from '../../src/home/kinds/kinds';
import { newHome } from '../../src/home/newHome';
import { pieceDefaults } from '../../src/home/kindDefaults';
import { anyHome } from '../support/anyHome';
import type { Home, KindName, Opening, Piece, Point } from '../../src/home/home';
import type { Kind, Thing } from '../../src/home/kinds/kind';

const NAMES = Object.keys(KINDS) as KindName[];

/** Every thing on the plan of a home, with its kind. */
const things = (home: Home): { kind: Kind; thing: Thing }[] =>
  NAMES.flatMap((name) => {
    const kind: Kind = KINDS[name];
    return (Object.values(home[kind.collection]) as Thing[]).map((thing) => ({ kind, thing }));
  });

const everyThing = (check: (home: Home, kind: Kind, thing: Thing) => void, numRuns = 60) =>
  fc.assert(
    fc.property(anyHome, (home) => {
      for (const { kind, thing } of things(home)) check(home, kind, thing);
    }),
    { numRuns },
  );

const bed = (fields: Partial<Piece> = {}): Piece => ({
  id: 'p1',
  kind: 'bed',
  name: '',
  level: 'l1',
  at: [2, 3],
  angle: 0,
  ...pieceDefaults('bed', [2, 2]),
  locked: false,
  mayStandIn: null,
  ...fields,
});

/** A room of 4 × 3 m with a door in its right wall. */
function roomWithDoor(door: Partial<Opening> = {}): Home {
  const home = newHome();
  home.rooms.r1 = {
    id: 'r1',
    level: 'l1',
    name: 'Bedroom',
    use: 'sleeping',
    outline: [
      [0, 0],
      [4, 0],
      [4, 3],
      [0, 3],
    ],
  };
  home.openings.o1 = {
    id: 'o1',
    room: 'r1',
    kind: 'door',
    wall: 1,
    offset: 0.2,
    width: 0.8,
    hinge: 'start',
    swing: 'in',
    ...door,
  };
  return home;
}

describe('every kind of thing', () => {
  it('moved there and back is the same thing', () => {
    fc.assert(
      fc.property(
        anyHome,
        fc.integer({ min: -9e4, max: 9e4 }),
        fc.integer({ min: -9e4, max: 9e4 }),
        (home, x, y) => {
          const [dx, dy] = [x / 1e4, y / 1e4];
          for (const { kind, thing } of things(home)) {
            if (kind.kind === 'opening') continue;
            const there = kind.drag(home, thing, [dx, dy]);
            expect(kind.drag(home, there, [-dx, -dy])).toEqual(thing);
          }
        },
      ),
      { numRuns: 60 },
    );
  });

  it('turned by a quarter four times is the same thing, and by any angle and back within a hair', () => {
    everyThing((home, kind, thing) => {
      let turned = thing;
      for (let i = 0; i < 4; i += 1) turned = kind.turn(home, turned, 90, [1, 2]);
      expect(kind.shape(home, turned)).toEqual(kind.shape(home, thing));
      const back = kind.turn(home, kind.turn(home, thing, 33.3, [1, 2]), -33.3, [1, 2]);
      kind.shape(home, back).points.forEach((p, i) => {
        const [x, y] = kind.shape(home, thing).points[i]!;
        expect(Math.hypot(p[0] - x, p[1] - y)).toBeLessThan(5e-4);
      });
    });
  });

  it('is hit at no distance inside a closed shape and on an open one, and outside by how far it is', () => {
    everyThing((home, kind, thing) => {
      const { points, closed } = kind.shape(home, thing);
      for (const corner of points) expect(kind.distanceTo(home, thing, corner)).toBeLessThan(1e-9);
      const middle: Point = [
        points.reduce((sum, [x]) => sum + x, 0) / points.length,
        points.reduce((sum, [, y]) => sum + y, 0) / points.length,
      ];
      if (closed && insideDistance(points, middle) > 0) expect(kind.distanceTo(home, thing, middle)).toBe(0);
      const far: Point = [points[0]![0], 500];
      const path = closed ? [...points, points[0]!] : points;
      expect(kind.distanceTo(home, thing, far)).toBeCloseTo(distanceToPath(far, path), 9);
    });
  });

  it('has its handles on its shape, but for the one that turns', () => {
    everyThing((home, kind, thing) => {
      const { points, closed } = kind.shape(home, thing);
      const path = closed ? [...points, points[0]!] : points;
      const handles = kind.handles(home, thing);
      expect(new Set(handles.map(({ key }) => key)).size).toBe(handles.length);
      for (const { at, role } of handles)
        if (role !== 'turn') expect(distanceToPath(at, path)).toBeLessThan(1e-9);
    });
  });

  it('stays as it is when a handle is put where it is', () => {
    everyThing((home, kind, thing) => {
      for (const { key, at } of kind.handles(home, thing)) {
        const again = kind.shape(home, kind.dragHandle(home, thing, key, at)).points;
        kind.shape(home, thing).points.forEach(([x, y], i) => {
          expect(Math.hypot(again[i]![0] - x, again[i]![1] - y), `${kind.kind} ${key}`).toBeLessThan(5e-4);
        });
      }
    });
  });

  it('lets other things snap to every point of its shape', () => {
    everyThing((home, kind, thing) => {
      expect(kind.snaps(home, thing).points).toEqual(kind.shape(home, thing).points);
    });
  });

  it('has a level that is there, and is found by what names it', () => {
    everyThing((home, kind, thing) => {
      expect(Object.keys(home.levels)).toContain(kind.level(home, thing));
      expect(thingOf(home, { kind: kind.kind, id: thing.id })).toBe(thing);
    });
    expect(thingOf(newHome(), { kind: 'room', id: 'constructor' })).toBeUndefined();
  });
});

describe('a room', () => {
  const home = roomWithDoor();
  const room = home.rooms.r1!;

  it('moves one corner, or pushes one wall along its normal and no other way', () => {
    expect(KINDS.room.dragHandle(home, room, 'corner-2', [5, 4]).outline).toEqual([
      [0, 0],
      [4, 0],
      [5, 4],
      [0, 3],
    ]);
    expect(KINDS.room.dragHandle(home, room, 'wall-1', [4.5, 99]).outline).toEqual([
      [0, 0],
      [4.5, 0],
      [4.5, 3],
      [0, 3],
    ]);
  });

  it('takes its openings with it', () => {
    expect(KINDS.room.follows(home, 'r1')).toEqual([{ kind: 'opening', id: 'o1' }]);
  });
});

describe('an opening', () => {
  it('lies on its wall, from its offset', () => {
    const home = roomWithDoor();
    expect(KINDS.opening.shape(home, home.openings.o1!).points).toEqual([
      [4, 0.2],
      [4, 1],
    ]);
  });

  it('slides along its wall and stops at the corners', () => {
    const home = roomWithDoor();
    const drag = (delta: Point) => KINDS.opening.drag(home, home.openings.o1!, delta);
    expect(drag([0, 1])).toMatchObject({ wall: 1, offset: 1.2 });
    expect(drag([0, 9])).toMatchObject({ wall: 1, offset: 2.2 });
    expect(drag([9, 0])).toMatchObject({ wall: 1, offset: 0.2 });
  });

  it('goes over to another wall of its room that is nearer and long enough', () => {
    const home = roomWithDoor();
    const drag = (delta: Point, opening = home.openings.o1!) => KINDS.opening.drag(home, opening, delta);
    // Its middle is at 4, 0.6; two metres to the left the lower wall is nearest.
    expect(drag([-2, -0.5])).toMatchObject({ wall: 0, width: 0.8 });
    expect(drag([-2, -0.5]).offset).toBeCloseTo(1.6, 9);
    expect(drag([-4, 0.9])).toMatchObject({ wall: 3 });
    const wide = roomWithDoor({ wall: 0, offset: 0.2, width: 3.5 });
    expect(KINDS.opening.drag(wide, wide.openings.o1!, [2, 1]).wall).toBe(0);
  });

  it('is made wider and narrower by its ends, within its wall', () => {
    const home = roomWithDoor();
    const pull = (key: string, to: Point) => KINDS.opening.dragHandle(home, home.openings.o1!, key, to);
    expect(pull('end', [4, 1.4])).toMatchObject({ offset: 0.2, width: 1.2 });
    expect(pull('end', [4, 7])).toMatchObject({ offset: 0.2, width: 2.8 });
    expect(pull('end', [4, 0])).toMatchObject({ offset: 0.2, width: 0.1 });
    expect(pull('start', [3, 0.5])).toMatchObject({ offset: 0.5, width: 0.5 });
    expect(pull('start', [4, 2])).toMatchObject({ offset: 0.9, width: 0.1 });
  });
});

describe('a piece', () => {
  it('has its head at +y and, for someone lying face up, the left hand at +x', () => {
    // Seen from above, someone who lies face up with the head up the page looks at the reader: the left hand is on the
    // reader's right.
    const middle = ({ cells }: { cells: Point[] }): Point => [
      cells.reduce((sum, [x]) => sum + x, 0) / cells.length,
      cells.reduce((sum, [, y]) => sum + y, 0) / cells.length,
    ];
    const { at, size } = bed();
    const left = middle(zoneOf('bed', { at, angle: 0 }, size, 'left'));
    const right = middle(zoneOf('bed', { at, angle: 0 }, size, 'right'));
    expect(left[0]).toBeCloseTo(2.5, 9);
    expect(right[0]).toBeCloseTo(1.5, 9);
    // A quarter turn counter-clockwise: the head points to −x, and the left hand up the page.
    expect(toPlan({ at, angle: 90 }, [0, 1])).toEqual([1, 3]);
    expect(middle(zoneOf('bed', { at, angle: 90 }, size, 'left'))[1]).toBeCloseTo(3.5, 9);
  });

  it('is turned by its handle so that the head points there', () => {
    const home = newHome();
    const turnTo = (to: Point) => KINDS.piece.dragHandle(home, bed(), 'turn', to).angle;
    expect(turnTo([2, 9])).toBe(0);
    expect(turnTo([-9, 3])).toBe(90);
    expect(turnTo([2, -9])).toBe(180);
    expect(turnTo([9, 3])).toBe(270);
    expect(turnTo([1, 4])).toBe(45);
    expect(KINDS.piece.handles(home, bed()).find(({ role }) => role === 'turn')!.at[1]).toBeGreaterThan(4);
  });

  it('is made larger by a corner while the opposite corner stays', () => {
    const home = newHome();
    const wider = KINDS.piece.dragHandle(home, bed(), 'corner-2', [4, 4.5]);
    expect(wider).toMatchObject({ size: [3, 2.5], at: [2.5, 3.25] });
    expect(KINDS.piece.shape(home, wider).points[0]).toEqual([1, 2]);
    const turned = KINDS.piece.dragHandle(home, bed({ angle: 90 }), 'corner-2', [0, 5]);
    expect(turned.size).toEqual([3, 3]);
    expect(turned.at).toEqual([1.5, 3.5]);
  });

  it('asks for floor beside it by its width: both sides of a principal double, one side of a single', () => {
    expect(pieceDefaults('bed', [0.9, 1.9]).access).toEqual({ left: 0.75, right: 0, foot: 0 });
    expect(pieceDefaults('bed', [1.35, 1.9]).access).toEqual({ left: 0.75, right: 0, foot: 0.75 });
    expect(pieceDefaults('bed', [1.8, 2]).access).toEqual({ left: 0.75, right: 0.75, foot: 0.75 });
    expect(pieceDefaults('desk').access.foot).toBe(0.9);
  });
});
