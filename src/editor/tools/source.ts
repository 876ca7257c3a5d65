import { addSource } from '../../home/edits/add';
import type { Point } from '../../home/home';
import { addedThings } from '../things';
import { createDraft } from './draft';
import { pairs } from './pairs';
import type { Bench, Tool } from './tool';

/** Marks where field comes from: a point by one tap, a line corner by corner. */
export function createSourceTool(bench: Bench): Tool {
  return createDraft(bench, () => {
    const kind = bench.load.source?.kind ?? 'point';
    const name = bench.load.source?.name ?? '';
    const finish = (path: Point[]) => {
      const before = bench.home;
      if (!bench.run(addSource({ level: bench.view.level, kind, name, path: pairs(path) }))) return false;
      bench.select(addedThings(before, bench.home, 'source'));
      bench.takeUp();
      return true;
    };
    return kind === 'point'
      ? { closed: false, least: 1, most: 1, finish }
      : { closed: false, least: 2, most: Infinity, finish };
  });
}
