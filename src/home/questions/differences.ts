import { isElsewhere } from '../../engine/arranging/place';
import type { Arrangement, Home } from '../home';

/** What of a home an arrangement has otherwise: pieces that stand elsewhere, rooms used for something else, sources changed. */
export const differences = (
  home: Pick<Home, 'pieces' | 'rooms'>,
  { pieces, sources, rooms }: Pick<Arrangement, 'pieces' | 'sources' | 'rooms'>,
): Pick<Arrangement, 'pieces' | 'sources' | 'rooms'> => ({
  pieces: pieces.filter((place) => isElsewhere(home.pieces[place.id]!, place)),
  sources: sources.filter(({ scale, path }) => scale !== 1 || path !== null),
  rooms: rooms.filter(({ id, use }) => home.rooms[id]!.use !== use),
});
