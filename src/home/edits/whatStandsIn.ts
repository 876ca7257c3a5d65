import { centroid } from '../../engine/geometry/polygon';
import { roomAt } from '../questions/roomAt';
import { KINDS } from '../kinds/kinds';
import type { Home, Id, KindName, Point, Ref } from '../home';
import type { Kind, Thing } from '../kinds/kind';

/** Openings are not among them: those follow the wall they are in. */
const STANDS: readonly KindName[] = ['fixture', 'piece', 'source', 'walk', 'reading'];

/** Where a thing must lie to stand in a room: its middle where it covers ground, else all of it. */
function placesOf({ points, closed }: ReturnType<Kind['shape']>): readonly Point[] {
  return closed ? [centroid(points)] : points;
}

/**
 * The references with all that stands in the rooms among them, each once: when a room is moved as a whole, what was
 * measured and put down in it is still in it.
 */
export function withWhatStandsIn(home: Home, refs: readonly Ref[]): Ref[] {
  const rooms = new Set(refs.flatMap(({ kind, id }) => (kind === 'room' ? [id] : [])));
  if (rooms.size === 0) return [...refs];
  const levels = new Set([...rooms].map((id) => home.rooms[id]?.level));
  const isIn = (level: Id, at: Point) => rooms.has(roomAt(home, level, at)?.id ?? '');
  const asked = new Set(refs.map(({ kind, id }) => `${kind} ${id}`));
  const stand = STANDS.flatMap((name) => {
    const kind: Kind = KINDS[name];
    return (Object.values(home[kind.collection]) as Thing[])
      .filter((thing) => {
        const level = kind.level(home, thing);
        return levels.has(level) && placesOf(kind.shape(home, thing)).every((at) => isIn(level, at));
      })
      .map(({ id }): Ref => ({ kind: name, id }));
  });
  return [...refs, ...stand.filter(({ kind, id }) => !asked.has(`${kind} ${id}`))];
}
