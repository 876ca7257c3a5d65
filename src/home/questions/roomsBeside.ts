import { add, lerp, scale, sub } from '../../engine/geometry/point';
import type { Home, Opening, Room } from '../home';
import { openingEnds } from '../kinds/opening';
import { roomAt } from './roomAt';

/** Walls between rooms are thinner than twice this, metres. */
const BESIDE = 0.3;

/** The two rooms that an opening joins: the one it is drawn in, and the one beyond, null where that is outdoors. */
export function roomsBeside(home: Home, opening: Opening): [Room, Room | null] {
  const own = home.rooms[opening.room]!;
  const [a, b] = openingEnds(home, opening);
  const along = sub(b, a);
  const across = scale([-along[1], along[0]], BESIDE / Math.hypot(...along));
  const middle = lerp(a, b, 0.5);
  const beyond = [across, scale(across, -1)]
    .map((step) => roomAt(home, own.level, add(middle, step)))
    .find((room) => room !== null && room !== own && room.use !== 'grounds');
  return [own, beyond ?? null];
}
