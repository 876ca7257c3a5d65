import { add, rotate, scale, sub } from '../../engine/geometry/point';
import { rectangle, toLocal, toPlan } from '../../engine/geometry/pose';
import { distanceToOutline, outlineSnaps } from './outlined';
import { tidy, tidyAngle, tidyLength } from './tidy';
import type { Piece } from '../home';
import type { Kind } from './kind';

/** How far beyond the head the handle for turning stands, metres. */
const REACH = 0.4;

/** The smallest a handle can make a piece, metres. */
const SMALLEST = 0.2;

export const piece: Kind<Piece> = {
  kind: 'piece',
  collection: 'pieces',
  level: (_home, { level }) => level,
  shape: (_home, thing) => ({ points: rectangle(thing, thing.size), closed: true }),
  distanceTo: (_home, thing, at) => distanceToOutline(rectangle(thing, thing.size), at),
  handles: (_home, thing) => [
    ...rectangle(thing, thing.size).map((at, i) => ({ key: `corner-${i}`, at, role: 'corner' as const })),
    { key: 'turn', at: toPlan(thing, [0, thing.size[1] / 2 + REACH]), role: 'turn' },
  ],
  drag: (_home, thing, delta) => ({ ...thing, at: tidy(add(thing.at, delta)) }),
  dragHandle: (_home, thing, key, to) => {
    if (key === 'turn') {
      const [x, y] = sub(to, thing.at);
      return { ...thing, angle: tidyAngle((Math.atan2(y, x) * 180) / Math.PI - 90) };
    }
    const corners = rectangle(thing, thing.size);
    const opposite = corners[(Number(key.split('-')[1]) + 2) % 4]!;
    const [x, y] = toLocal({ at: opposite, angle: thing.angle }, to);
    const size: [number, number] = [
      tidyLength(Math.max(SMALLEST, Math.abs(x))),
      tidyLength(Math.max(SMALLEST, Math.abs(y))),
    ];
    const middle = rotate([(Math.sign(x) || 1) * size[0], (Math.sign(y) || 1) * size[1]], thing.angle);
    return { ...thing, size, at: tidy(add(opposite, scale(middle, 0.5))) };
  },
  snaps: (_home, thing) => outlineSnaps(rectangle(thing, thing.size)),
  turn: (_home, thing, degrees, about) => ({
    ...thing,
    at: tidy(add(about, rotate(sub(thing.at, about), degrees))),
    angle: tidyAngle(thing.angle + degrees),
  }),
  follows: () => [],
};
