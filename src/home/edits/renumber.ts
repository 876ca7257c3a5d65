import { add, distance, scale } from '../../engine/geometry/point';
import { closestOnSegment } from '../../engine/geometry/segment';
import { memberProblems } from '../integrity';
import { openingEnds } from '../kinds/opening';
import { wallOf } from '../kinds/outlined';
import { tidyLength } from '../kinds/tidy';
import { put } from './check';
import { thingAt } from './onPlan';
import type { Home, Opening, Point, Ref } from '../home';
import type { Path, Problem } from '../problem';

/** Sets an opening on whichever of some walls comes nearest to where its middle was, kept between the corners. */
function reset(opening: Opening, middle: Point, outline: readonly Point[], walls: readonly number[]): void {
  const nearest = walls
    .map((wall) => ({ wall, near: closestOnSegment(middle, ...wallOf(outline, wall)) }))
    .reduce((best, each) => (each.near.distance < best.near.distance - 1e-9 ? each : best));
  const long = distance(...wallOf(outline, nearest.wall));
  opening.wall = nearest.wall;
  opening.offset = tidyLength(
    Math.max(0, Math.min(long - opening.width, nearest.near.t * long - opening.width / 2)),
  );
}

/** The outline before the change, in plan coordinates, of a thing that has corners. */
export function cornersOf(
  home: Home,
  ref: Ref,
): { ok: true; outline: readonly Point[]; path: Path } | { ok: false; problem: Problem } {
  const found = thingAt(home, ref);
  if (!found.ok) return found;
  const { points, closed } = found.kind.shape(home, found.thing);
  const path = [found.kind.collection, ref.id];
  if (found.kind.reshape && closed) return { ok: true, outline: points, path: [...path, 'outline'] };
  return { ok: false, problem: { kind: 'no-corners', path } };
}

/**
 * Gives a room or fixture another outline whose walls are the old ones renumbered. `walls` says which new walls an old
 * one has become; with more than one, an opening goes to the nearest.
 */
export function renumber(
  draft: Home,
  ref: Ref,
  outline: readonly Point[],
  walls: (old: number) => readonly number[],
): Problem | null {
  const found = thingAt(draft, ref);
  if (!found.ok) return found.problem;
  const { collection, reshape } = found.kind;
  const openings = Object.values(draft.openings).filter(({ room }) => room === ref.id);
  const middles = openings.map((opening) => {
    const [start, end] = openingEnds(draft, opening);
    return scale(add(start, end), 0.5);
  });
  const problem = put(draft, collection, ref.id, reshape!(found.thing, outline, walls));
  if (problem) return problem;
  openings.forEach((opening, i) => reset(opening, middles[i]!, outline, walls(opening.wall)));
  return openings.flatMap(({ id }) => memberProblems(draft, 'openings', id))[0] ?? null;
}
