import { describe, expect, it } from 'vitest';
import { bounds, contains } from '../../src/engine/geometry/polygon';
import { rectangle } from '../../src/engine/geometry/pose';
import { addFixture, addPiece } from '../../src/home/edits/add';
import { duplicate } from '../../src/home/edits/duplicate';
import { rotate } from '../../src/home/edits/rotate';
import { slideInside } from '../../src/home/edits/slideInside';
import type { Home } from '../../src/home/home';
import { box, homeWith, room } from '../support/homes';
import { drive } from '../support/driver';

const bed = (x: number, y: number) =>
  addPiece({ kind: 'bed', name: 'Bed', level: 'l1', at: [x, y], size: [1.4, 2] });
const corners = (home: Home, id: string) => rectangle(home.pieces[id]!, home.pieces[id]!.size);

describe('one more', () => {
  it('stands beside its original and in its room, clear of what is there, and is what is selected', async () => {
    const { editor, key } = await drive({ home: homeWith(room(box(0, 0, 5, 4)), bed(1, 3), bed(4.2, 3)) });
    editor.select([{ kind: 'piece', id: 'p2' }]);
    key('d', { command: true });
    expect(editor.selection).toEqual([{ kind: 'piece', id: 'p3' }]);
    expect(editor.home.pieces.p3!.at).toEqual([2.7, 3]);
    const [a, b] = [bounds(corners(editor.home, 'p2')), bounds(corners(editor.home, 'p3'))];
    expect(b.x1).toBeLessThanOrEqual(a.x0);
    editor.undo();
    expect(Object.keys(editor.home.pieces)).toEqual(['p1', 'p2']);
  });

  it('of a room shares a wall with it and lies over no other room', () => {
    const home = homeWith(
      room(box(0, 0, 4, 3)),
      room(box(4, 0, 8, 3)),
      duplicate([{ kind: 'room', id: 'r1' }]),
    );
    expect(home.rooms.r3!.outline).toEqual(box(-4, 0, 0, 3));
  });

  it('of a radiator goes along its wall', () => {
    const home = homeWith(
      room(box(0, 0, 4, 3)),
      addFixture({ level: 'l1', kind: 'radiator', outline: box(1, 0, 2, 0.1) }),
      duplicate([{ kind: 'fixture', id: 'f1' }]),
    );
    expect(home.fixtures.f2!.outline).toEqual(box(2.1, 0, 3.1, 0.1));
  });
});

describe('a piece that is turned', () => {
  it('stays off the walls: it slides in by what it would stand in them', () => {
    const home = homeWith(room(box(0, 0, 5, 4)), bed(0.7, 3), rotate([{ kind: 'piece', id: 'p1' }], 90));
    expect(home.pieces.p1).toMatchObject({ at: [1, 3], angle: 90 });
    for (const [x, y] of corners(home, 'p1')) expect([x >= -1e-9, y <= 4]).toEqual([true, true]);
  });

  it('goes out of a corner of the room by both walls, and of a slanted one', () => {
    const home = homeWith(
      room(box(0, 0, 5, 4)),
      addPiece({ kind: 'desk', name: 'Desk', level: 'l1', at: [0.6, 0.3], size: [1.2, 0.6] }),
      rotate([{ kind: 'piece', id: 'p1' }], 45),
    );
    for (const [x, y] of corners(home, 'p1')) expect([x > -1e-3, y > -1e-3]).toEqual([true, true]);
    const slanted = [
      [0, 0],
      [6, 0],
      [6, 2],
      [2, 6],
      [0, 6],
    ] as const;
    const outline = box(3, 1.5, 5.5, 2.5);
    const shift = slideInside(outline, slanted)!;
    expect(Math.hypot(...shift)).toBeCloseTo(0, 6);
    const pushed = slideInside(box(4, 2, 6, 4), slanted)!;
    for (const [x, y] of box(4, 2, 6, 4)) {
      const at = [x + pushed[0], y + pushed[1]] as const;
      expect(contains(slanted, [at[0] - 1e-3, at[1] - 1e-3])).toBe(true);
    }
  });

  it('that does not fit the room at all stays about its middle', () => {
    const home = homeWith(room(box(0, 0, 1.6, 4)), bed(0.8, 2), rotate([{ kind: 'piece', id: 'p1' }], 90));
    expect(home.pieces.p1).toMatchObject({ at: [0.8, 2], angle: 90 });
  });
});
