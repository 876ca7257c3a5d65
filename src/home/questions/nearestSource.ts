import { distanceToPath } from '../../engine/geometry/segment';
import { inOrder } from '../order';
import type { AssessWalk } from '../../engine/assess';
import type { Home, Source, Walk } from '../home';

/** Least distance between two paths on the plan, by the ends of each: exact for straight ones that do not cross. */
const between = (source: Source, walk: Walk): number =>
  Math.min(
    ...walk.path.map((p) => distanceToPath(p, source.path)),
    ...source.path.map((p) => distanceToPath(p, walk.path)),
  );

/** The marked source nearest to a walk, its height above the floor that the walk was on; null where none is marked. */
export function nearestSource(home: Home, walk: Walk): NonNullable<AssessWalk['from']> | null {
  const near = inOrder(home.sources)
    .map((source) => ({ source, distance: between(source, walk) }))
    .reduce<{ source: Source; distance: number } | null>(
      (best, each) => (best && best.distance <= each.distance ? best : each),
      null,
    );
  if (!near) return null;
  const { path, height, level } = near.source;
  const rise = home.levels[level]!.elevation - home.levels[walk.level]!.elevation;
  return { path, height: height + rise };
}
