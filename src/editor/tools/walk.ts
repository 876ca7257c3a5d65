import { addWalk } from '../../home/edits/add';
import type { Point } from '../../home/home';
import { addedThings } from '../things';
import { createDraft } from './draft';
import { pairs } from './pairs';
import type { Bench, Tool } from './tool';

/** Draws the straight line of a walk by its two ends. */
export function createWalkTool(bench: Bench): Tool {
  const finish = (path: Point[]) => {
    const before = bench.home;
    if (!bench.run(addWalk({ level: bench.view.level, path: pairs(path) }))) return false;
    bench.select(addedThings(before, bench.home, 'walk'));
    bench.takeUp();
    return true;
  };
  return createDraft(bench, () => ({ closed: false, least: 2, most: 2, finish }));
}
