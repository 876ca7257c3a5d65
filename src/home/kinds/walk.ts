import { distanceToPath } from '../../engine/geometry/segment';
import { dragPath, pathHandles, pathSnaps } from './along';
import { shifted, turned } from './outlined';
import type { Walk } from '../home';
import type { Kind } from './kind';

export const walk: Kind<Walk> = {
  kind: 'walk',
  collection: 'walks',
  level: (_home, { level }) => level,
  shape: (_home, { path }) => ({ points: path, closed: false }),
  distanceTo: (_home, { path }, at) => distanceToPath(at, path),
  handles: (_home, { path }) => pathHandles(path),
  drag: (_home, thing, delta) => ({ ...thing, path: shifted(thing.path, delta) }),
  dragHandle: (_home, thing, key, to) => ({ ...thing, path: dragPath(thing.path, key, to) }),
  snaps: (_home, { path }) => pathSnaps(path),
  turn: (_home, thing, degrees, about) => ({ ...thing, path: turned(thing.path, degrees, about) }),
  follows: () => [],
};
