import { distanceToPath } from '../engine/geometry/segment';
import type { Assessment } from '../engine/assess';
import { stillUnmarked } from '../home/questions/stillUnmarked';
import type { Home, Point } from '../home/home';
import type { UnmarkedSource } from '../engine/mapping/sourceSampling/unmarkedSources';
import type { View } from './editor';

/** The likely unmarked sources on the sheet: those of the level, while the map is looked at. */
export function suspectsShown(
  sources: Home['sources'],
  assessment: Assessment | null,
  { stage, level }: Pick<View, 'stage' | 'level'>,
): readonly UnmarkedSource[] {
  if (stage !== 'map' || !assessment) return NONE;
  const here = stillUnmarked({ sources }, assessment.evidence.unmarked ?? []).filter(
    (suspect) => suspect.level === level,
  );
  return here.length > 0 ? here : NONE;
}

const NONE: readonly UnmarkedSource[] = [];

/** The one meant by a point: the nearest within reach. */
export function suspectAt(
  suspects: readonly UnmarkedSource[],
  at: Point,
  reach: number,
): UnmarkedSource | null {
  let best: UnmarkedSource | null = null;
  let least = reach;
  for (const suspect of suspects) {
    const distance = distanceToPath(at, suspect.path);
    if (distance > least) continue;
    [best, least] = [suspect, distance];
  }
  return best;
}
