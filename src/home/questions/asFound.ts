import { inOrder } from '../order';
import type { Home, Id } from '../home';

/** The name of the arrangement that keeps how the furniture stood before any proposal was taken. */
export const AS_FOUND = 'As found';

/** How the furniture stood before any proposal was taken; null where none was, or where that is no longer known. */
export const asFound = (home: Pick<Home, 'arrangements'>): Home['arrangements'][Id] | null =>
  inOrder(home.arrangements).find(({ name }) => name === AS_FOUND) ?? null;

/** The home with its furniture where it was found; pieces that came later stand where they do. */
export function homeAsFound(home: Home): Home {
  const places = (asFound(home)?.pieces ?? []).filter(
    ({ id, level }) => home.pieces[id] && home.levels[level],
  );
  const back = places.map(({ id, level, at, angle }) => [id, { ...home.pieces[id]!, level, at, angle }]);
  return { ...home, pieces: { ...home.pieces, ...Object.fromEntries(back) } };
}
