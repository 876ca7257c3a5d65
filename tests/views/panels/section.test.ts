import { describe, expect, it } from 'vitest';
import { addRoom, addWalk } from '../../../src/home/edits/add';
import type { Home, Point } from '../../../src/home/home';
import { newHome } from '../../../src/home/newHome';
import { placeAlong, sectionPlan } from '../../../src/views/panels/judge/section';

const box = (x: number, width: number): Point[] => [
  [x, 0],
  [x + width, 0],
  [x + width, 3],
  [x, 3],
];

function rowOfRooms(): Home {
  const home = newHome();
  const edits = [
    addRoom({ level: 'l1', name: 'Garden', use: 'grounds', outline: box(-4, 14) }),
    addRoom({ level: 'l1', name: 'Bedroom', use: 'sleeping', outline: box(0, 4) }),
    addRoom({ level: 'l1', name: 'Hall', use: 'passage', outline: box(4.1, 2) }),
    addWalk({
      level: 'l1',
      path: [
        [-3, 1.5],
        [9, 1.5],
      ],
    }),
  ];
  for (const edit of edits) expect(edit.apply(home)).toBeUndefined();
  return home;
}

describe('a section along a walk', () => {
  it('finds the walls, the two faces of one wall once, and the rooms between', () => {
    const home = rowOfRooms();
    const { walls, rooms, length } = sectionPlan(home, home.walks.w1!);
    expect(length).toBe(12);
    expect(walls.map((at) => Number(at.toFixed(6)))).toEqual([3, 7, 9.1]);
    expect(rooms.map(({ id }) => home.rooms[id]!.name)).toEqual(['Garden', 'Bedroom', 'Hall', 'Garden']);
  });

  it('knows where a place along a bent path lies', () => {
    const path: Point[] = [
      [0, 0],
      [3, 0],
      [3, 4],
    ];
    expect(placeAlong(path, 1)).toEqual([1, 0]);
    expect(placeAlong(path, 5)).toEqual([3, 2]);
    expect(placeAlong(path, 99)).toEqual([3, 4]);
  });
});
