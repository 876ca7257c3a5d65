import { bed, box, desk, door, fitted, readingsOf, request, room } from '../../engine/arranging/homes';
import type {
  ArrangeOpening,
  ArrangePiece,
  ArrangeRequest,
  ArrangeRoom,
} from '../../../src/engine/arranging/request';
import type { Random } from '../../../src/engine/algebra/random';
import type { Ring } from '../../../src/engine/geometry/point';

const WALL = 0.12;

const free = { left: 0, right: 0, foot: 0 };

/** Bed and desk, or these with a second bed, a cot and an armchair; some with a double bed. */
function furniture(draw: Random, count: 2 | 5): ArrangePiece[] {
  const double = draw.next() < 0.6;
  const first = bed({
    at: [1.2, 1.2],
    size: double ? [1.6, 2] : [0.9, 2],
    access: double ? { left: 0.75, right: 0.75, foot: 0 } : { left: 0.75, right: 0, foot: 0 },
    uses: double
      ? [
          { who: 'A', side: 'left', hours: 8 },
          { who: 'B', side: 'right', hours: 7.5 },
        ]
      : [{ who: 'A', side: 'middle', hours: 8 }],
  });
  const all = [
    first,
    desk({ at: [1.2, 3], size: [draw.next() < 0.5 ? 1.2 : 1.4, 0.7] }),
    bed({ id: 'child', at: [2.6, 1.2], uses: [{ who: 'C', side: 'middle', hours: 10 }] }),
    bed({
      id: 'cot',
      kind: 'cot',
      size: [0.6, 1.2],
      height: 0.5,
      at: [2, 2],
      access: { left: 0.6, right: 0, foot: 0 },
      uses: [{ who: 'D', side: 'middle', hours: 12 }],
    }),
    bed({
      id: 'chair',
      kind: 'seat',
      size: [0.8, 0.8],
      at: [2.6, 3],
      access: { ...free, foot: 0.5 },
      uses: [{ who: 'B', side: 'middle', hours: 3 }],
    }),
  ];
  return all.slice(0, count);
}

function outlineOf(
  draw: Random,
  [x0, y0, x1, y1]: readonly [number, number, number, number],
  outer: 'low' | 'high',
): Ring {
  const kind = draw.below(4);
  const [w, h] = [x1 - x0, y1 - y0];
  // What is cut away lies on the outside of the home, so that no two rooms meet.
  if (kind === 0 && w > 3.2 && h > 3.2) {
    const [cw, ch] = [1, 0.9];
    return outer === 'high'
      ? [
          [x0, y0],
          [x1, y0],
          [x1, y1 - ch],
          [x1 - cw, y1 - ch],
          [x1 - cw, y1],
          [x0, y1],
        ]
      : [
          [x0 + cw, y0],
          [x1, y0],
          [x1, y1],
          [x0, y1],
          [x0, y0 + ch],
          [x0 + cw, y0 + ch],
        ];
  }
  if (kind === 1) {
    const lean = draw.between(0.2, 0.7);
    return outer === 'high'
      ? [
          [x0, y0],
          [x1, y0],
          [x1, y1 - lean],
          [x0, y1],
        ]
      : [
          [x0, y0],
          [x1, y0 + lean],
          [x1, y1],
          [x0, y1],
        ];
  }
  return box(x0, y0, x1, y1);
}

/** Three to six rooms in two rows, each with a door to the next and a window outside, over a drawn field. */
export function furnishedHome(draw: Random, count: 2 | 5, step = 0.1): ArrangeRequest {
  const number = 3 + draw.below(4);
  const low = Math.ceil(number / 2);
  const widths = Array.from({ length: number }, () => draw.between(2.8, 4.6));
  const depths = [draw.between(3, 4.4), draw.between(3, 4.4)];
  const rooms: ArrangeRoom[] = [];
  const openings: ArrangeOpening[] = [];
  let x = 0;
  for (let i = 0; i < number; i++) {
    const upper = i >= low;
    if (i === low) x = 0;
    const [y0, y1] = upper ? [depths[0] + WALL, depths[0] + WALL + depths[1]] : [0, depths[0]];
    const outline = outlineOf(draw, [x, y0, x + widths[i], y1], upper ? 'high' : 'low');
    const use = draw.next() < 0.65 || i < 2 ? 'sleeping' : 'living';
    rooms.push(room(`r${i}`, outline, use));
    // Rows touch along y = depths[0]: the upper rooms' first wall and the lower rooms' wall at their top.
    const inner = upper
      ? 0
      : outline.findIndex(([, y], k) => y === y1 && outline[(k + 1) % outline.length][1] === y1);
    const at = (wall: number) => {
      const [a, b] = [outline[wall], outline[(wall + 1) % outline.length]];
      return Math.hypot(b[0] - a[0], b[1] - a[1]);
    };
    openings.push(
      door(`r${i}`, inner, draw.between(0.1, at(inner) - 1), {
        hinge: draw.next() < 0.5 ? 'start' : 'end',
        swing: draw.next() < 0.7 ? 'in' : 'out',
      }),
    );
    const outer = upper ? outline.length - 2 : 0;
    if (at(outer) > 1.6)
      openings.push({
        ...door(`r${i}`, outer, at(outer) / 2 - 0.6),
        id: `w${i}`,
        kind: 'window',
        width: 1.2,
      });
    x += widths[i] + WALL;
  }
  return request({ fitted: fieldOver(draw, 16, 9.5), rooms, openings, step, pieces: furniture(draw, count) });
}

/** One large room that everything stands in. */
export function studio(draw: Random, step = 0.1): ArrangeRequest {
  const [w, h] = [draw.between(5, 7.5), draw.between(4.5, 6)];
  const openings = [
    door('r0', 0, draw.between(0.2, w - 1.1)),
    { ...door('r0', 2, draw.between(0.5, w - 2)), id: 'w0', kind: 'window' as const, width: 1.2 },
    { ...door('r0', 1, draw.between(0.5, h - 2)), id: 'w1', kind: 'window' as const, width: 1.2 },
  ];
  const rooms = [
    room(
      'r0',
      draw.next() < 0.5
        ? box(0, 0, w, h)
        : [
            [0, 0],
            [w, 0],
            [w, h - draw.between(0.3, 1)],
            [0, h],
          ],
    ),
  ];
  return request({ fitted: fieldOver(draw, w, h), rooms, openings, step, pieces: furniture(draw, 5) });
}

function fieldOver(draw: Random, w: number, h: number) {
  const spots = Array.from({ length: 3 }, () => [
    draw.between(-1, w + 1),
    draw.between(-1, h + 1),
    draw.between(0.02, 0.3),
  ]);
  const field = (x: number, y: number) =>
    (0.02 +
      spots.reduce((sum, [sx, sy, strength]) => sum + strength / ((x - sx) ** 2 + (y - sy) ** 2 + 0.4), 0)) *
    Math.exp(0.05 * draw.normal());
  return fitted(readingsOf(field, [0, 0, w, h], Math.sqrt((w * h) / 36)));
}
