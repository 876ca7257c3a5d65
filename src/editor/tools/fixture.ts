import { addFixture } from '../../home/edits/add';
import { addedThings } from '../things';
import { pairs } from './pairs';
import { createRectangleTool } from './rectangle';
import type { Bench, Tool } from './tool';

/** Draws what is built in, as a rectangle. */
export function createFixtureTool(bench: Bench): Tool {
  return createRectangleTool(bench, (outline) => {
    const before = bench.home;
    const kind = bench.load.fixture?.kind ?? 'other';
    if (!bench.run(addFixture({ level: bench.view.level, kind, outline: pairs(outline) }))) return;
    bench.select(addedThings(before, bench.home, 'fixture'));
    bench.takeUp();
  });
}
