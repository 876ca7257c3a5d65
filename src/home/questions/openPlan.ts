import { roomAt } from './roomAt';
import { suits, type ArrangeKind } from '../../engine/arranging/request';
import type { Put } from '../../engine/arranging/place';
import type { Arrangement, Home } from '../home';

/** Uses of rooms that may be slept in where the plan is open: the project's choice. */
const OPEN: readonly string[] = ['living', 'work'];

/** Who is furniture for sleeping: what suits no room but one to sleep in. */
const isSleptIn = (kind: ArrangeKind): boolean => OPEN.every((use) => !suits(kind, use));

/**
 * The home with an open plan of rooms by use: living rooms and rooms to work in count as rooms to sleep in, with all that the rules
 * ask of these, a window to escape by among it. Rooms to sleep in already take what the others take.
 */
export const openPlan = (home: Home): Home => ({
  ...home,
  rooms: Object.fromEntries(
    Object.entries(home.rooms).map(([id, room]) => [
      id,
      OPEN.includes(room.use) ? { ...room, use: 'sleeping' } : room,
    ]),
  ),
});

/** The rooms that would change their use where pieces are put: those that come to be slept in. */
export function usesChangedBy(home: Home, places: readonly Put[]): Arrangement['rooms'] {
  const slept = places.flatMap(({ id, level, at }) => {
    const piece = home.pieces[id];
    const room = roomAt(home, level, at);
    if (!piece || !room || !isSleptIn(piece.kind) || !OPEN.includes(room.use)) return [];
    return roomAt(home, piece.level, piece.at) === room ? [] : [room.id];
  });
  return [...new Set(slept)].map((id) => ({ id, use: 'sleeping' as const }));
}
