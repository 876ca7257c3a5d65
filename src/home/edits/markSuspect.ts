import { addSource } from './add';
import type { Edit } from './edit';
import type { Source } from '../home';
import type { UnmarkedSource } from '../../engine/mapping/sourceSampling/unmarkedSources';

/** Centimetres: finer than anybody knows where an unseen source is. */
const rounded = (metres: number): number => Math.round(metres * 100) / 100;

/**
 * A likely unmarked source as a marked one: where it is and as high, falling with distance as such a source does: 1/r of a
 * net current, 1/r³ of an appliance, by the readings of a street line, whose load and net current fall differently.
 */
export const asSource = (suspect: UnmarkedSource): Omit<Source, 'id' | 'name'> => ({
  kind: suspect.kind,
  level: suspect.level,
  path: suspect.path.map(([x, y]): [number, number] => [rounded(x), rounded(y)]),
  height: rounded(suspect.height),
  falloff: suspect.origin === 'outside' ? 'fit' : suspect.amperes ? 1 : 3,
  origin: suspect.origin,
});

export function markSuspect(suspect: UnmarkedSource, name: string): Edit {
  const { path, ...rest } = asSource(suspect);
  return {
    ...addSource({ ...rest, name, path: path.map(([x, y]): [number, number] => [x, y]) }),
    name: 'Mark a suspected source',
  };
}
