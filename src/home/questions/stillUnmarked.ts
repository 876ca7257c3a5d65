import { asSource } from '../edits/markSuspect';
import { inOrder } from '../order';
import type { Home } from '../home';
import type { UnmarkedSource } from '../../engine/mapping/sourceSampling/unmarkedSources';

/** Those that have not been marked since they were found: the next sampling will know them as marks. */
export function stillUnmarked(
  { sources }: Pick<Home, 'sources'>,
  unmarked: readonly UnmarkedSource[],
): readonly UnmarkedSource[] {
  const marked = new Set(inOrder(sources).map(({ level, path }) => JSON.stringify([level, path])));
  return unmarked.filter((suspect) => {
    const { level, path } = asSource(suspect);
    return !marked.has(JSON.stringify([level, path]));
  });
}
