import { expect, test } from 'vitest';
import { random } from '../../../src/engine/algebra/random';
import { signedArea } from '../../../src/engine/geometry/polygon';
import { distance, type Ring } from '../../../src/engine/geometry/point';
import type { Home } from '../../../src/home/home';
import { addOpening } from '../../../src/home/edits/add';
import { planGeometry } from '../../../src/views/canvas/planGeometry';
import { pictureFor } from '../../../src/views/report/paper';
import { houseBounds, levelBounds } from '../../../src/views/report/planBounds';
import { planDrawing } from '../../../src/views/report/planDrawing';
import { box, homeWith, room } from '../../support/homes';

/** The same home with a room drawn the other way round; its openings stay where they are. */
function turned(home: Home, id: string): Home {
  const own = home.rooms[id]!;
  const n = own.outline.length;
  const length = (wall: number) => distance(own.outline[wall]!, own.outline[(wall + 1) % n]!);
  const openings = Object.values(home.openings).map((opening) =>
    opening.room !== id
      ? opening
      : {
          ...opening,
          wall: (2 * n - 2 - opening.wall) % n,
          offset: length(opening.wall) - opening.offset - opening.width,
          hinge: opening.hinge === 'start' ? ('end' as const) : ('start' as const),
        },
  );
  return {
    ...home,
    rooms: { ...home.rooms, [id]: { ...own, outline: own.outline.toReversed() } },
    openings: Object.fromEntries(openings.map((opening) => [opening.id, opening])),
  };
}

const drawn = (home: Home) => {
  const bounds = [houseBounds(home, 'l1', []), levelBounds(home, 'l1', [])];
  const sheet = pictureFor(bounds[0]!, { width: 300, height: 300 });
  const plan = planGeometry(home, 'l1');
  const surface = (rings: Ring[]) => rings.reduce((sum, ring) => sum + signedArea(ring), 0);
  const inside: boolean[] = [];
  for (let y = -0.95; y < 8; y += 0.1)
    for (let x = -0.95; x < 10; x += 0.1) inside.push(plan.isWall(x, y), plan.isFloor(x, y));
  const marks = planDrawing({
    home,
    level: 'l1',
    round: 'a',
    picture: null,
    target: 0.1,
    sheet,
    detailed: false,
    proposed: [],
  }).marks;
  // Where a ring begins is no matter; what lies inside it is compared above.
  const order = marks.map((mark) => (mark.is === 'text' ? mark.text : mark.is));
  return { bounds, inside, order, walls: surface(plan.walls).toFixed(4) };
};

const TOUCHING = [
  [box(0, 0, 2, 2), box(0, 2, 4, 5), box(2, 0, 4, 2)],
  [
    box(0, 0, 2, 2),
    [
      [2, 0],
      [2, 2],
      [0, 2],
      [0, 5],
      [6, 5],
      [6, 0],
    ] as [number, number][],
  ],
];

test('walls are not lost when a room is drawn by corners clockwise: the drawing is the same for either winding', () => {
  const seed = 20261125;
  const chance = random(seed);
  for (const rooms of TOUCHING) {
    const counterClockwise = rooms.map((ring) => (signedArea(ring) < 0 ? ring.toReversed() : ring));
    const home = homeWith(
      ...counterClockwise.map((ring) => room(ring as [number, number][])),
      addOpening({ room: 'r1', kind: 'door', wall: 1, offset: 0.4, width: 0.8, hinge: 'start' }),
      addOpening({ room: 'r2', kind: 'window', wall: 0, offset: 0.3, width: 0.9 }),
    );
    const asDrawn = drawn(home);
    for (let i = 0; i < 6; i++) {
      const some = Object.keys(home.rooms).filter(() => chance.next() < 0.6);
      expect(drawn(some.reduce(turned, home)), `seed ${seed}, turned ${some.join(', ')}`).toEqual(asDrawn);
    }
  }
});
