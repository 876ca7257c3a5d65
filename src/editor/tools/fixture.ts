import { addFixture } from '../../home/edits/add';
import type { Point } from '../../home/home';
import { fixtureSize } from '../../home/kindDefaults';
import { tidy } from '../../home/kinds/tidy';
import { againstWall, footprint } from '../snapping/againstWall';
import { snapScene } from '../snapping/candidates';
import { snapPoint } from '../snapping/snapPoint';
import { addedThings } from '../things';
import { pairs } from './pairs';
import { createRectangleTool } from './rectangle';
import type { Aim, Bench, Tool } from './tool';

/** The side that looks into the room, of an outline that was set with its back to a wall. */
const FRONT = 0;

/** Sets what is built in: a press for one of common size with its back to the wall, a drag for one of another size. */
export function createFixtureTool(bench: Bench): Tool {
  const kind = () => bench.load.fixture?.kind ?? 'other';

  const common = (aim: Aim): Point[] => {
    const size = fixtureSize(kind());
    // With alt it stands where it is put, like everything else.
    const wall = aim.pull > 0 ? againstWall(bench.home, bench.view, aim.at, size, Infinity) : null;
    const pose = wall ?? {
      at: snapPoint(snapScene(bench.home, bench.view), aim.at, { pull: aim.pull }).at,
      angle: 0,
    };
    return footprint(pose, size).map(tidy);
  };

  const make = (outline: readonly Point[], front: number | null) => {
    const before = bench.home;
    const fields = { level: bench.view.level, kind: kind(), outline: pairs(outline), front };
    if (!bench.run(addFixture(fields))) return;
    bench.select(addedThings(before, bench.home, 'fixture'));
    bench.takeUp();
  };

  return createRectangleTool(bench, {
    make: (outline) => make(outline, null),
    // A radiator is thinner than what snapping pulls together on a small plan.
    thin: true,
    press: { outline: common, make: (outline) => make(outline, kind() === 'wardrobe' ? FRONT : null) },
  });
}
