import { distanceToOutline, dragOutline, outlineHandles, outlineSnaps, shifted, turned } from './outlined';
import type { Room } from '../home';
import type { Kind } from './kind';

export const room: Kind<Room> = {
  kind: 'room',
  collection: 'rooms',
  level: (_home, { level }) => level,
  shape: (_home, { outline }) => ({ points: outline, closed: true }),
  distanceTo: (_home, { outline }, at) => distanceToOutline(outline, at),
  handles: (_home, { outline }) => outlineHandles(outline),
  drag: (_home, thing, delta) => ({ ...thing, outline: shifted(thing.outline, delta) }),
  dragHandle: (_home, thing, key, to) => ({ ...thing, outline: dragOutline(thing.outline, key, to) }),
  snaps: (_home, { outline }) => outlineSnaps(outline),
  turn: (_home, thing, degrees, about) => ({ ...thing, outline: turned(thing.outline, degrees, about) }),
  reshape: (thing, outline) => ({ ...thing, outline: [...outline] }),
  follows: (home, id) =>
    Object.values(home.openings)
      .filter((opening) => opening.room === id)
      .map((opening) => ({ kind: 'opening', id: opening.id })),
};
