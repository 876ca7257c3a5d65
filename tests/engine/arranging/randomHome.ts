import { bed, box, desk, door, fitted, readingsOf, request, room } from './homes';
import type { ArrangeOpening, ArrangeRequest, ArrangeRoom } from '../../../src/engine/arranging/request';
import type { Random } from '../../../src/engine/algebra/random';
import type { Ring } from '../../../src/engine/geometry/point';

const pick = <T>(draw: Random, list: readonly T[]): T => list[draw.below(list.length)];
const halves = (draw: Random, low: number, high: number) =>
  low + 0.05 * draw.below(Math.round((high - low) / 0.05) + 1);

function outlineOf(draw: Random, x: number): Ring {
  const w = halves(draw, 2.6, 3.8);
  const h = halves(draw, 2.6, 3.8);
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

/** A home of one or two small rooms with doors, windows, a bed and a desk, over a drawn field. */
export function randomHome(draw: Random, step = 0.2): ArrangeRequest {
  const rooms: ArrangeRoom[] = [];
  const openings: ArrangeOpening[] = [];
  const count = 1 + draw.below(2);
  for (let i = 0; i < count; i++) {
    // Walls half a metre and more thick: no door speaks for the next room.
    const outline = outlineOf(draw, i * 4.6);
    rooms.push(room(`r${i}`, outline));
    const wall = draw.below(outline.length);
    const next = outline[(wall + 1) % outline.length];
    const length = Math.hypot(next[0] - outline[wall][0], next[1] - outline[wall][1]);
    if (length > 1) {
      openings.push(
        door(`r${i}`, wall, halves(draw, 0, length - 0.85), {
          hinge: pick(draw, ['start', 'end']),
          swing: pick(draw, ['in', 'out', 'none']),
        }),
      );
    }
    openings.push({ ...door(`r${i}`, 0, 0.4), id: `w${i}`, kind: 'window', width: 1.2 });
  }
  const [sx, sy, strength] = [draw.between(-1, 9), draw.between(-1, 4), draw.between(0.05, 0.4)];
  const field = (x: number, y: number) =>
    0.02 + strength / ((x - sx) ** 2 + (y - sy) ** 2 + 0.3) + 0.02 * Math.exp(draw.normal());
  const ids = rooms.map(({ id }) => id);
  const narrow = draw.next() < 0.5;
  return request({
    fitted: fitted(readingsOf(field, [0, 0, 9, 4], 1.1)),
    rooms,
    openings,
    step,
    pieces: [
      bed({
        mayStandIn: ids,
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
      desk({ mayStandIn: ids, at: [1.3, 2], size: [pick(draw, [1, 1.2]), 0.6] }),
    ],
  });
}
