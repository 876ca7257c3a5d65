import { describe, expect, it } from 'vitest';
import { addOpening, addPiece } from '../../src/home/edits/add';
import { wallAt } from '../../src/home/questions/wallAt';
import { box, homeWith, room } from '../support/homes';

// Walls of the room from its lower left corner: below, right, above, left.
const home = homeWith(
  room(box(0, 0, 5, 4)),
  addOpening({ room: 'r1', kind: 'window', wall: 2, offset: 1 }),
  addOpening({ room: 'r1', kind: 'door', wall: 0, offset: 1 }),
  addPiece({ kind: 'bed', level: 'l1', at: [1, 3], size: [1.4, 2] }),
  addPiece({ kind: 'cot', level: 'l1', at: [4, 1], size: [0.6, 1.2] }),
);
const put = (id: string, x: number, y: number, angle: number) => ({
  id,
  room: 'r1',
  at: [x, y] as const,
  angle,
});

describe('the wall a piece stands at', () => {
  it.each([
    ['above', put('p1', 2, 3, 0), 2, 0],
    ['left', put('p1', 1, 2, 90), 3, -90],
    ['below', put('p1', 2, 1, 180), 0, 180],
    ['right', put('p1', 4, 2, 270), 1, 90],
    ['above, 9 cm off', put('p1', 2, 2.91, 0), 2, 0],
  ] as const)('head %s', (_, place, wall, bearing) => {
    const found = wallAt(home, place)!;
    expect(found.wall).toBe(wall);
    expect(Math.cos(((found.bearing - bearing) * Math.PI) / 180)).toBeCloseTo(1, 9);
  });

  it('is none in mid-room, nor where only the foot of a bed is there', () => {
    expect(wallAt(home, put('p1', 2.5, 2, 0))).toBeNull();
    expect(wallAt(home, put('p1', 2, 1, 0))).toBeNull();
  });

  it('may be beside a cot', () => {
    expect(wallAt(home, put('p2', 0.3, 2, 0))!.wall).toBe(3);
    expect(wallAt(home, put('p2', 4.7, 2, 0))!.wall).toBe(1);
  });

  it('says what is in it, and turns with north', () => {
    expect(wallAt(home, put('p1', 2, 3, 0))).toMatchObject({ window: true, door: false });
    expect(wallAt(home, put('p1', 2, 1, 180))).toMatchObject({ window: false, door: true });
    expect(wallAt(home, put('p1', 1, 2, 90))).toMatchObject({ window: false, door: false });
    // North lies a quarter turn counter-clockwise of up the page: up is east.
    expect(wallAt({ ...home, north: 90 }, put('p1', 2, 3, 0))!.bearing).toBeCloseTo(90, 9);
  });
});
