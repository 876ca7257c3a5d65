import { bed, box, desk, door, fitted, readingsOf, request, room } from '../../engine/arranging/homes';
import type {
  ArrangeFixture,
  ArrangeOpening,
  ArrangePiece,
  ArrangeRequest,
  ArrangeRoom,
} from '../../../src/engine/arranging/request';
import type { Random } from '../../../src/engine/algebra/random';
import type { Ring } from '../../../src/engine/geometry/point';

const pick = <T>(draw: Random, list: readonly T[]): T => list[draw.below(list.length)];
const steps = (draw: Random, low: number, high: number) =>
  low + 0.05 * draw.below(Math.round((high - low) / 0.05) + 1);

function outlineOf(draw: Random, x: number, [least, most]: readonly [number, number]): Ring {
  const w = steps(draw, least, most);
  const h = steps(draw, least, most);
  switch (draw.below(3)) {
    case 0:
      return box(x, 0, x + w, h);
    case 1:
      // L-shaped
      return [
        [x, 0],
        [x + w, 0],
        [x + w, h - 1.1],
        [x + w - 1.2, h - 1.1],
        [x + w - 1.2, h],
        [x, h],
      ];
    default:
      // One wall slants, and the outline runs clockwise
      return [
        [x, 0],
        [x, h],
        [x + w - draw.between(0.3, 1), h],
        [x + w, 0],
      ];
  }
}

function openingsOf(draw: Random, id: string, outline: Ring): ArrangeOpening[] {
  const length = (wall: number) => {
    const [a, b] = [outline[wall], outline[(wall + 1) % outline.length]];
    return Math.hypot(b[0] - a[0], b[1] - a[1]);
  };
  const walls =
    draw.next() < 0.3
      ? [draw.below(outline.length), draw.below(outline.length)]
      : [draw.below(outline.length)];
  const doors = [...new Set(walls)]
    .filter((wall) => length(wall) > 1)
    .map((wall) =>
      door(id, wall, steps(draw, 0, length(wall) - 0.85), {
        hinge: pick(draw, ['start', 'end']),
        swing: pick(draw, ['in', 'out', 'none']),
      }),
    );
  return [...doors, { ...door(id, 0, 0.4), id: `window-${id}`, kind: 'window', width: 1.2 }];
}

/** Something small that stays, against the left wall of a room. */
function fixtureOf(draw: Random, id: string, x: number): ArrangeFixture {
  const y = steps(draw, 0.5, 1.5);
  return draw.next() < 0.5
    ? {
        id: `radiator-${id}`,
        level: 'l1',
        kind: 'radiator',
        outline: box(x, y, x + 0.1, y + 0.8),
        front: null,
      }
    : { id: `wardrobe-${id}`, level: 'l1', kind: 'wardrobe', outline: box(x, y, x + 0.6, y + 0.9), front: 1 };
}

function piecesOf(draw: Random, count: number, rooms: readonly ArrangeRoom[]): ArrangePiece[] {
  const ids = rooms.map(({ id }) => id);
  const narrow = draw.next() < 0.5;
  const own: Partial<ArrangePiece> = { mayStandIn: ids };
  const free = { left: 0, right: 0, foot: 0 };
  const all: ArrangePiece[] = [
    bed({
      ...own,
      at: [1.3, 1],
      size: narrow ? [0.9, 2] : [1.4, 2],
      access: narrow ? { left: 0.75, right: 0, foot: 0 } : { left: 0.6, right: 0.45, foot: 0.3 },
      uses: narrow
        ? [{ who: 'A', side: 'middle', hours: 8 }]
        : [
            { who: 'A', side: 'left', hours: 8 },
            { who: 'B', side: 'right', hours: 7 },
          ],
    }),
    desk({ ...own, at: [1.3, 2], size: [pick(draw, [1, 1.2]), 0.6] }),
    bed({
      ...own,
      id: 'cot',
      kind: 'cot',
      size: [0.6, 1.2],
      height: 0.5,
      at: [2, 2],
      access: { left: 0.6, right: 0, foot: 0 },
      uses: [{ who: 'C', side: 'middle', hours: 12 }],
    }),
    bed({ ...own, id: 'chest', kind: 'other', size: [1, 0.5], uses: [], at: [1.5, 1.5], access: free }),
    bed({
      ...own,
      id: 'chair',
      kind: 'seat',
      size: [0.7, 0.7],
      at: [2.2, 1],
      access: { ...free, foot: 0.4 },
      uses: [{ who: 'B', side: 'middle', hours: 3 }],
    }),
  ];
  return all.slice(0, count);
}

export interface SmallHome {
  /** Of the bed, desk, cot, chest and chair the first so many. */
  pieces?: number;
  /** Metres between places tried. */
  step?: number;
  /** Least and most width and depth of rooms, metres. */
  sizes?: readonly [number, number];
  fixtures?: boolean;
}

/** A home of one or two small rooms with doors, windows and furniture, over a drawn field. */
export function smallHome(
  draw: Random,
  { pieces = 2, step = 0.2, sizes = [2.6, 3.8], fixtures = false }: SmallHome = {},
): ArrangeRequest {
  // Walls half a metre and more thick: no door speaks for the next room.
  const rooms = Array.from({ length: 1 + draw.below(2) }, (_, i) =>
    room(`r${i}`, outlineOf(draw, i * (sizes[1] + 0.8), sizes)),
  );
  const openings = rooms.flatMap(({ id, outline }) => openingsOf(draw, id, outline));
  const standing = fixtures ? rooms.map(({ id, outline }) => fixtureOf(draw, id, outline[0][0])) : [];
  const [sx, sy, strength] = [draw.between(-1, 9), draw.between(-1, 4), draw.between(0.05, 0.4)];
  const field = (x: number, y: number) =>
    0.02 + strength / ((x - sx) ** 2 + (y - sy) ** 2 + 0.3) + 0.02 * Math.exp(draw.normal());
  return request({
    fitted: fitted(readingsOf(field, [0, 0, 2 * sizes[1] + 1, sizes[1]], 1.1)),
    rooms,
    openings,
    fixtures: standing,
    step,
    pieces: piecesOf(draw, pieces, rooms),
  });
}
