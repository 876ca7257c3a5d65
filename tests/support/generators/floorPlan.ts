import { contains, insideDistance } from '../../../src/engine/geometry/polygon';
import type { Point, Ring } from '../../../src/engine/geometry/point';
import type { Random } from '../../../src/engine/algebra/random';

/** Rooms by cutting the larger side, again and again. */
export function split(
  [x0, y0, x1, y1]: [number, number, number, number],
  chance: Random,
  depth: number,
): Ring[] {
  const [w, d] = [x1 - x0, y1 - y0];
  if (depth === 0 || Math.max(w, d) < 4) {
    return [
      [
        [x0, y0],
        [x1, y0],
        [x1, y1],
        [x0, y1],
      ],
    ];
  }
  const share = chance.between(0.35, 0.65);
  const [one, other]: [number, number, number, number][] =
    w > d
      ? [
          [x0, y0, x0 + share * w, y1],
          [x0 + share * w, y0, x1, y1],
        ]
      : [
          [x0, y0, x1, y0 + share * d],
          [x0, y0 + share * d, x1, y1],
        ];
  return [...split(one, chance, depth - 1), ...split(other, chance, depth - 1)];
}

/** A place 0.1 to 0.5 m inside a wall. */
export function beside(rooms: readonly Ring[], chance: Random): Point {
  const room = rooms[chance.below(rooms.length)];
  for (;;) {
    const p = within(room, chance);
    const depth = insideDistance(room, p);
    if (depth > 0.1 && depth < 0.5) return p;
  }
}

const within = (box: Ring, chance: Random): Point => [
  chance.between(box[0][0], box[2][0]),
  chance.between(box[0][1], box[2][1]),
];

/** Each place the farthest from those before it among ten drawn (best candidate; Mitchell 1991), 0.2 m off the walls. */
export function spread(rooms: readonly Ring[], count: number, chance: Random): Point[] {
  const x1 = Math.max(...rooms.flat().map(([x]) => x));
  const y1 = Math.max(...rooms.flat().map(([, y]) => y));
  const draw = (): Point => {
    for (;;) {
      const p: Point = [chance.between(0, x1), chance.between(0, y1)];
      if (rooms.some((room) => contains(room, p) && insideDistance(room, p) > 0.2)) return p;
    }
  };
  const places: Point[] = [];
  const gap = (p: Point) => Math.min(...places.map((q) => Math.hypot(p[0] - q[0], p[1] - q[1])));
  while (places.length < count) {
    const drawn = Array.from({ length: 10 }, draw);
    places.push(drawn.reduce((best, p) => (gap(p) > gap(best) ? p : best)));
  }
  return places;
}
