import { describe, expect, it } from 'vitest';
import { addFixture } from '../../../src/home/edits/add';
import { frontSide, isRectangle, sideWay, withDepth } from '../../../src/views/panels/sketch/fixtureSides';
import { box, homeWith, room } from '../../support/homes';

const onWall = (outline: [number, number][]) => {
  const home = homeWith(room(box(0, 0, 5, 4)), addFixture({ level: 'l1', kind: 'radiator', outline }));
  return { home, fixture: home.fixtures.f1! };
};

describe('a fixture by width and depth', () => {
  it('grows into the room, whichever wall it stands at: its back stays', () => {
    for (const [outline, deeper] of [
      [box(1, 0, 2, 0.1), box(1, 0, 2, 0.3)],
      [box(1, 3.9, 2, 4), box(1, 3.7, 2, 4)],
      [box(0, 1, 0.1, 2), box(0, 1, 0.3, 2)],
      [box(4.9, 1, 5, 2), box(4.7, 1, 5, 2)],
    ] as const) {
      const { home, fixture } = onWall([...outline]);
      const grown = withDepth(fixture.outline, frontSide(home, fixture), 0.3);
      grown.forEach((corner, i) => {
        expect(corner[0]).toBeCloseTo(deeper[i]![0], 9);
        expect(corner[1]).toBeCloseTo(deeper[i]![1], 9);
      });
    }
  });

  it('its sides are named by the way they look, either way round', () => {
    const ways = ['down', 'right', 'up', 'left'];
    expect([0, 1, 2, 3].map((side) => sideWay(box(0, 0, 2, 1), side))).toEqual(ways);
    expect([0, 1, 2, 3].map((side) => sideWay(box(0, 0, 2, 1).toReversed(), side))).toEqual([
      'up',
      'right',
      'down',
      'left',
    ]);
  });

  it('only right angles are told by a width and a depth', () => {
    expect(isRectangle(box(0, 0, 2, 1))).toBe(true);
    expect(
      isRectangle([
        [0, 0],
        [2, 0],
        [2.2, 1],
        [0, 1],
      ]),
    ).toBe(false);
    expect(
      isRectangle([
        [0, 0],
        [2, 0],
        [0, 1],
      ]),
    ).toBe(false);
  });
});
