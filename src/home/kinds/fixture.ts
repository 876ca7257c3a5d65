import { distanceToOutline, dragOutline, outlineHandles, outlineSnaps, shifted, turned } from './outlined';
import type { Fixture } from '../home';
import type { Kind } from './kind';

export const fixture: Kind<Fixture> = {
  kind: 'fixture',
  collection: 'fixtures',
  level: (_home, { level }) => level,
  shape: (_home, { outline }) => ({ points: outline, closed: true }),
  distanceTo: (_home, { outline }, at) => distanceToOutline(outline, at),
  handles: (_home, { outline }) => outlineHandles(outline),
  drag: (_home, thing, delta) => ({ ...thing, outline: shifted(thing.outline, delta) }),
  dragHandle: (_home, thing, key, to) => ({ ...thing, outline: dragOutline(thing.outline, key, to) }),
  snaps: (_home, { outline }) => outlineSnaps(outline),
  turn: (_home, thing, degrees, about) => ({ ...thing, outline: turned(thing.outline, degrees, about) }),
  reshape: (thing, outline, walls) => ({
    ...thing,
    outline: [...outline],
    front: thing.front === null ? null : walls(thing.front)[0]!,
  }),
  follows: () => [],
};
