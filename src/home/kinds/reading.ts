import { add, distance, rotate, sub } from '../../engine/geometry/point';
import { tidy } from './tidy';
import type { Reading } from '../home';
import type { Kind } from './kind';

export const reading: Kind<Reading> = {
  kind: 'reading',
  collection: 'readings',
  level: (_home, { level }) => level,
  shape: (_home, { at }) => ({ points: [at], closed: false }),
  distanceTo: (_home, thing, at) => distance(thing.at, at),
  handles: () => [],
  drag: (_home, thing, delta) => ({ ...thing, at: tidy(add(thing.at, delta)) }),
  dragHandle: (_home, thing) => thing,
  snaps: (_home, { at }) => ({ points: [at], lines: [] }),
  turn: (_home, thing, degrees, about) => ({
    ...thing,
    at: tidy(add(about, rotate(sub(thing.at, about), degrees))),
  }),
  // A reading is what the meter showed once; a copy would be evidence that nobody took.
  uncopied: ({ id }) => ({ kind: 'reading-not-copied', id }),
  follows: () => [],
};
